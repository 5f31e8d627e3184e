# The words of the interface in English. A value in braces is filled in; a selector stands on lines of its own.

skip-to-steps = Skip to the steps
skip-to-page = Skip to the page
state-of-guide = State of this guide
where-you-are = Where you are
home = All guides
the-guide = The guide

# What a page is about, in a list of pages made by machines
about-site = { $guides ->
    [one] One guide
   *[other] { $guides } guides
} for cutting { $species ->
    [one] one species
   *[other] { $species } species
}, with cautions, steps, times and yields.
about-page = { $title }. { $site }: { $guides ->
    [one] one guide
   *[other] { $guides } guides
} for { $species ->
    [one] one species
   *[other] { $species } species
}.

# Days and ages
date = { $day } { $month } { $year }
month-january = January
month-february = February
month-march = March
month-april = April
month-may = May
month-june = June
month-july = July
month-august = August
month-september = September
month-october = October
month-november = November
month-december = December
age-under = under { $months } months
age-over = over { $months } months
age-from = from { $months } months
age-any = any age
age-between = { $low }–{ $high } months
age-unknown = not known: counts as over every limit

# The line that every sheet carries
strip-in-force = { $id }, revision { $number }, in force since { $date }
strip-draft = DRAFT, not in force: { $id }, revision { $number }, of { $date }
strip-withdrawn = WITHDRAWN, do not work from it: { $id }, revision { $number }, of { $date }
mark-draft = DRAFT, not in force
mark-withdrawn = WITHDRAWN, do not work from it
state-draft = draft
state-in-force = in force
state-withdrawn = withdrawn

# What becomes of a piece
use-retail = retail
use-for-cutting = for cutting
use-lean-trim = lean trim
use-fat-trim = fat trim
use-bone = bone
use-skin = skin
use-offal = offal
use-inedible = inedible
use-risk-material = risk material
use-loss = lost on the way
sum-retail = All retail pieces
sum-for-cutting = All pieces for cutting
sum-lean-trim = All lean trim
sum-fat-trim = All fat trim
sum-bone = All bone
sum-skin = All skin
sum-offal = All offal
sum-inedible = All inedible
sum-risk-material = All risk material
sum-loss = All that is lost

# Safety
signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
signal-notice = NOTICE
every-step = Every step.
in-steps = { $n ->
    [one] Step { $steps }.
   *[other] Steps { $steps }.
}
iso-sign-code = ISO 7010 sign { $code }.
iso-sign = ISO 7010 sign { $code }: { $name }.
what-can-hurt = What can hurt
law-first = Local codes and licensed practice come first. Where they ask for more than this guide, do what they ask.
law-before-page = Local codes and licensed practice come first. Where they ask for more, do what they ask.
held-against = Limits held against:
stricter = The shop is stricter: { $limit } { $most } at most.
limit-hold = keeping cold
limit-room = room
limit-time-out = time out of the cold
limit-receiving = receiving
limit-tool-water = water for tools
limit-cleaning-interval = cleaning of tools every
no-limits = This guidebook names no profile of limits; times and temperatures were held against none.

# A guide
guide = Guide
title = Title
start = Start
given-by = from
time = Time
trained-to-learner = trained to learner
set-up = set-up { $time }
clean-up = clean-up { $time }
cold = Cold
longest-out = { $time } out at the longest
makes = Makes
retail-pieces = { $n ->
    [one] { $n } retail piece
   *[other] { $n } retail pieces
}
pieces-for-cutting = { $n ->
    [one] { $n } for cutting
   *[other] { $n } for cutting
}
level = Level
know-first = Know first
age = Age of the animal
served = Served
raw = raw
allergens = Allergens
revision = Revision
revision-number = Revision { $n }
what-becomes-of-it = What becomes of it
whole-bar-note = Percent of the start weight, the typical values drawn; weights from { $worked } { $unit }.
typical-with-weight = typical { $percent } %, { $weight } { $unit }

# Steps
steps = { $n ->
    [one] The step
   *[other] Steps
}
yields-alone = What it gives
step-number = step { $n }
go-to-step = Go to a step
from = From
tools = Tools
or = or
with = with
wear = Wear
also-wear = Also wear
take-off = Take off
after = After
at-once = ({ $n } one after another)
side-left = left side
side-right = right side
side-both = both sides
other-hand = Other hand
landmark = Landmark
all-back-to-cold = Everything goes back to the cold.
back-to-cold = Back to the cold: { $pieces }.
pieces-out = Pieces out, weights from { $worked } { $unit } at the start
of-this-step = of this step
typical = typical
to-step = to step { $n }
pieces = { $n ->
    [one] { $n } piece
   *[other] { $n } pieces
}
shared-tub = other steps give to this tub too
portions-of = portions of { $size }
so-many = { $n } of them
slices-of = { $size } thick
anatomy = Anatomy
look-for = Here lie:
good-and-mistakes = Good work and mistakes
good = Good
mistakes = Mistakes
after-work = After the cutting

# At the bench and in the room. What stands in square brackets is filled in by the script of the page.
bench-view = Bench view
room-view = Room view
other-views = Other views
all-steps = All steps
before-you-start = Before you start
on-and-ready = On and ready
limit-most = Limit
begin-work = Begin
with-step = with step { $n }
go-back = Back
go-on = Next
step-done = Done
then-step = then step { $n }
the-last-step = that was the last step
more-below = More below
the-cut = The cut
comes-off = What comes off, from { $worked } { $unit } at the start
work-done = Work done
what-was-made = What was made, from { $worked } { $unit }
where-next = Where next
questions-counted = { $n ->
    [one] One question
   *[other] { $n } questions
}
bench-step = Step { $n } of { $all }
bench-resumed = Where you left off.
bench-older = You were at step { $n } of revision { $revision }: { $name }. This is revision { $own }, and ticks do not carry over.
bench-newer = You were at step { $n } of revision { $revision }: { $name }. This page is older: revision { $own }. Load it again where there is a signal.
bench-long-ago = You were at step { $n }, { $name }, more than a shift ago.
bench-step-gone = That step does not stand in this revision.
bench-cleared = Ticks, clocks and place are cleared.
bench-go = Go to step { $n }
bench-undo = Bring them back
bench-from-start = From the start
bench-return = Back to step { $n }
bench-all-ticked = All { $n } steps are ticked.
bench-not-ticked = Not ticked: { $steps }.
bench-took = { $time } by the clocks, { $usual } is usual.
bench-keeps = Your place and ticks are kept on this device, through a lock and a reload.
bench-forgets = This browser keeps nothing: ticks are lost when the page is closed. The address still holds your step.
ticked = Ticked
take-tick-back = Take the tick back
on-this-device = On this device
start-again = Start again
clock-at-each-step = A clock at each step
clock-note = A clock counts up while a step is shown. It moves nothing on and takes nothing away.
clock-of = of { $time }
clock-over = longer than usual
clock-pause = Pause
clock-go-on = Go on
clock-hide = Hide
screen-awake = The screen stays on while this page is shown.
screen-dark = This browser lets the screen go dark. Set a long screen time on the device; your place is kept.
read-aloud = Read aloud
stop-reading = Stop reading
no-voice = This device has no voice to read with.
range-to = to
bench-keys = Keys, or a presenter remote
key-done = Done, and on to the next step.
key-back = Back one step.
key-page-down = Page Down
key-page-up = Page Up
key-space = Space
key-read-on = Down the step; at its end, Done.
key-read-back = Up the step; at its top, Back.

dark-room = Dark room
bright-room = Bright room
full-screen = Full screen
leave-full-screen = Leave full screen
room-index = Steps
room-close = Close
room-place = Step { $n } of { $all }
room-part = { $n } of { $all }
room-question = Question
show-answer = Show the answer
anatomy-and-work = Anatomy, good work, mistakes
room-end = The end
key-picture-on = On to the next picture.
key-picture-back = Back to the one before.
key-step-on = A whole step on, or back.
key-home = To the first picture.
key-answer = Show or hide an answer.
key-enter = Enter
key-start = Home

# Weight and yield
where-the-weight-goes = Where the weight goes
flow-note = The thicker, the heavier. Numbers are steps, hatches are uses. The table below holds the figures.
flow-alt = { $piece } through the steps into its pieces. The table below holds the figures.
yield = Yield
own-weight = Your start weight, { $unit }
own-weight-outside = Outside { $range }, the start weight of this guide. The shares may not hold.
low = low
high = high
what-it-becomes = { $piece }: what it becomes
bounds-do-not-add = Low and high are bounds and do not add up; the typical column does.
all-rest-on-source = All shares rest on the
all-own-judgement = All shares are own judgement: no cutting tests yet.
piece = Piece
piece-out = Piece out
from-start = from
percent-of-start = % of the start
percent-of-step = % of what the step takes
rests-on = Rests on
weighed = Weighed
tested = tested ({ $n })
source = source
own-judgement = own judgement
yield-of-every-step = Yield of every step

out-of-the-cold = Out of the cold
stretch-step = Step { $n }
stretch-steps = Steps { $from } to { $to }
at-most = at most
who-watches = Watched by
if-missed = If it is missed:

# The cold clock
cold-clock = Cold clock
cold-clock-title = Cold clock: { $title }
cold-note = Each lane begins when its pieces leave the cold and ends when they go back. The table below holds the same numbers.
cold-alt = Drawing: lanes of minutes out of the cold against the limit; the table below holds the same numbers in { $n } rows.
cold-axis = Minutes out of the cold
cold-axis-in-all = Minutes out of the cold in all
cold-shortest = shortest: a trained cutter
cold-longest = longest: a learner, with the steps in it
cold-back = back to the cold
cold-before = out before this stretch
cold-more = and more, all in the table
cold-at-once = Step { $step }: { $n } one after another.
cold-limit-line = { $minutes } min, { $who }
cold-limit-far = limit { $minutes } min, off this drawing
limit-of-shop = limit of the shop
limit-of-profile = limit of the profile
no-time-limit = no rule sets a time
minutes-unknown = These steps state no minutes, so no longest time is known:
same-in-numbers = The same in numbers
cold-caption = Minutes out of the cold
cold-caption-note = From the start of the first step to the end of the last, at the pace of a trained cutter and of a learner.
steps-from-to = Steps
from-step = from
until-step = to
minutes-out = Minutes out
minutes-in-all = Minutes in all
least = least
most = most
room-left = Room left
not-known = not known
none = none

# Limits
limits-title = Limits
figures-from = Figures from:
limits-note = Each figure stands in the unit of its source, the other unit beside it. Where the profile is silent, nothing is checked, and no other profile's figure is used.
go-to-limit = Go to a limit
own-limits = Limits of the shop
own-limits-note = Stricter than the profile, or where the profile is silent.
limit = Limit
how-often = How often
asks-for = Asks for the option
set-by-shop = set in this guidebook
what-profile-says = What the profile says
limits-by-product = By product
limits-by-product-note = The highest figures. Each leads to its source.
in-these-guides = in these guides
in-words = in words
from-memory = (from memory)
silent = The profile is silent.
silent-here = The profile is silent here: nothing is checked.
silent-on = The profile is also silent on:
the-shop = The shop:
limits-one-by-one = Limit by limit
every-product = Every product
printed-too = ({ $figure } in the source)
worked-out = ({ $figure }, worked out)
only-when-asked = An option: it holds only where the guidebook asks for it.
force = Force
the-source = Source
when-missed = If missed
words-alone = In words alone: shown, never held against a number.
edition = Edition: { $edition }
read-in = Read in: { $place }
limit-above = above { $figure }
limit-at-most = { $figure } at most
limit-at-least = { $figure } at least
time-at-most = { $time } at most
time-within = within { $time }
time-every = every { $time } at the latest
time-from-slaughter = within { $time } of slaughter
time-at-least = for { $time } at least
stage-hold = Keeping cold
stage-receiving = Arriving
stage-room = Air of the room
stage-time-out = Time out of the cold
stage-tool-water = Water for tools
stage-cleaning-interval = Cleaning of tools
stage-cool-down = Cooling what arrives warm
stage-frozen = Frozen
stage-hot-hold = Keeping hot
stage-bring-in = Bringing meat in
stage-separation = Keeping species apart
stage-mincing = Into the mincer
stage-mince-age = Age at mincing
stage-parasite-freezing = Freezing against parasites
stage-histamine = Histamine
stage-risk-material = Risk material
stage-vacuum-pack = Vacuum packing
stage-young-worker = Young workers
stage-glove-on-food = Gloves on food
stage-label = Labels
product-red-meat = Red meat
product-offal = Offal
product-poultry = Poultry
product-rabbit = Rabbit
product-game = Game
product-fish = Fish
product-minced = Minced meat
product-preparation = Meat preparations
measure-core = inside the meat or fish
measure-surface = on its surface
measure-air = air of the room
measure-water = water
measure-none = no temperature
force-law = Law.
force-guidance = Guidance of an authority.
force-standard = Voluntary standard.
force-repealed = Repealed: shown for reference, never checked.
verified-read = The passage was read.
verified-adopted = Read in a code that adopts it.
verified-secondary = Second hand: read in a text that reports it.
verified-memory = From memory: shown, never a fault by itself.
verified-practice = Common practice.
clock-single = Each stretch out of the cold counts by itself.
clock-cumulative = All stretches out of the cold add up.

# Anatomy
anatomy-title = Anatomy: { $species }
anatomy-lead = What lies where, what it does, and which steps meet it.
glands-note = A gland comes out whole and goes with the inedible.
risk-note = Risk material is kept apart and destroyed. From which age, and by which rule:
go-to-region = Go to a region
reaches-in = Reaches in here:
region-inside = Inside the body
region-none = No region stated
kind-bone = Bones and joints
kind-muscle = Muscles
kind-tissue = Connective tissue and fat
kind-gland = Glands and lymph nodes
how-many = How many
on-each-side = { $n } on each side
on-both-sides = on both sides
count-differs = not the same in every animal
belongs-to = Belongs to
about-it = About it
what-to-do = What to do
gland-do = Take it out whole. It goes with the inedible.
risk-do = Keep it apart.
named-in = Steps
own-entry = Entry of this guidebook.

# The rest of a guide
questions = Questions
sources = Sources
accepted-advice = Accepted advice
accepted-by = Accepted by { $by }.
accepted-until = Accepted by { $by } until { $until }.
control = Control
state = State
in-force-since = In force since
dated = Dated
written-by = Written by
owner = Owner
approved-by = Approved by
nobody-yet = nobody yet
next-review = Next review
not-set = not set
changed-in = Changed in revision { $n }

# Home, species, tables
species = Species
guides = Guides
guides-counted = { $n ->
    [one] guide
   *[other] guides
}
from-pieces = from { $pieces }
what-changed = What changed
all-tables = All yield tables
as-a-table = As a table
tables = Yield tables
tables-note = What each guide gives, and what house cuts make of a whole piece, step after step.
from-start-to-last-cut = From the first piece to the last cut
species-tables = Yields of { $species }
species-table-note = Every guide with the shares of its start. A share of one table is no share of another.
chain-title = { $piece }, down to the last cut
chain-note = House cuts follow one another: a piece that one guide gives is the start of the next. Shares are of the first piece.
chain-bars-note = Percent of { $piece }, { $worked } { $unit }. Filled to the least, open to the greatest, a notch at the typical share.
by-use = By use
final-pieces = Final pieces
guides-in-order = Guides in the order of work
guide-table-title = Yield: { $title }
guide-table-note = { $piece }, { $weight }.
share-of-start = Share of the start
step-by-step = Step by step
steps-table = Each step, of what it takes and of the start
steps-table-note = The first three figures are percent of the pieces named in the bold row. The next three are percent of the start.
of-pieces = of { $pieces }
stands-in = Stands in

# The cut map of a species
cut-map = Cut map
cut-map-title = Cut map: { $species }
cut-map-note = Read it downwards. A box is a guide: a line leads into it from the piece that it cuts up, and lines lead out of it to what it gives. Hatches are what becomes of a piece. Percent and weight are typical values, of the piece at the top.
cut-map-part = Part { $n } of { $total } of the map.
cut-map-alt = Drawing: { $pieces } pieces and the { $guides ->
    [one] guide
   *[other] { $guides } guides
} between them; the tables below name them all, with the same numbers.
map-drawn = The map
map-on-the-way = on the way:
map-whole = Of { $piece }
map-whole-note = Weights from { $weight } { $unit }. Low and high are bounds; pieces that are cut up again count in what they become.
map-no-whole = Without a share
map-no-whole-note = More than one start leads to these pieces, or none of which the weight is known.
map-becomes = What becomes of it
map-comes-from = Comes from
map-first = the first start
map-taken-up = step { $n }: { $guide }

# Search. What stands in square brackets is filled in by the script of the page.
search = Search
search-label = Piece, step or word of the bench
search-keys = Slash comes here. Down and up go through what is found. Enter opens it. Escape clears the box.
search-clear = Clear
search-species = Species
search-kind = Show
search-any = All
search-piece = Pieces
search-anatomy = Parts of the animal
search-guide = Guides
search-step = Steps
search-course = Courses
search-page = Pages
search-one = 1 place found.
search-many = { $n } places found.
search-none = Nothing found for “{ $query }”. Try fewer letters, or look through a species.
search-elsewhere = Nothing here, but { $n } elsewhere.
search-everywhere = Look everywhere
search-some = No place has all of these words. These have some of them.
search-instead = No “{ $typed }” here, so this is “{ $found }”.
search-at-step = Step { $n }
search-short = Type one more letter.
search-reading = Reading the index.
search-failed = The index cannot be read. All pieces and guides stand in the list.
search-all = Show all { $n }
search-without-script = Search needs script.
search-list = All pieces and guides in a list

# Courses
courses = Courses
lessons = { $n ->
    [one] { $n } lesson
   *[other] { $n } lessons
}
class-of = a class of { $n }
lesson-done = Done
lesson-next = Next:
lessons-all-done = Every lesson is done.

# Pieces
pieces-title = Pieces and their names
pieces-note = What each piece is called, what it weighs, which step makes it, and what it becomes.
pieces-of-species = Pieces: { $species }
guides-of-species = Guides: { $species }
names-by-letter = All names
name-of = here called { $piece }
pieces-of-no-region = Of no one region
pieces-unlisted = Not in the cut list
also-called = Also called
codes = Codes
usual-weight = Usual weight
per-animal = { $n } to an animal
lies = Lies
use = Use
made-in = Made in
cut-up-in = Cut up in
start-of = Start of
house-cut = the house cut

# Figures as files
figures-as-files = As a file
figures-as-files-note = For a spreadsheet or another program. Shares are fractions of the start, minutes are as stated.
download = { $kind }, { $size }

# Checks
checks-title = What is checked
checks-note = Before these pages are made, { $n } checks look through the guidebook. This is what each of them finds, why it matters, and how to mend it.
checks-levels = With a fault nothing is published. Advice is told; most of it can be accepted with a reason.
level-fault = fault
level-advice = advice
check-off = Turned off in this guidebook:
check-why = Why
check-example = Example
check-mend = Mend
check-source = Rule from
checks-form = How files are written
checks-balance = Weight and shares
checks-order = Order of the work
checks-counts = Counted parts
checks-reference = Names and links
checks-caution = Cautions and protection
checks-cold = Cold and time
checks-anatomy = Anatomy
checks-control = Revisions and approval
checks-language = Language

# Source
source-title = Source: { $title }
source-note = The file { $file } of the guidebook, as its author wrote it. This guide was made from it.
source-file = Source file

# Sheets for paper: wall card, class sheet
wall-card = Wall card
wall-card-title = Wall card: { $title }
class-sheet = Class sheet
class-sheet-title = Class sheet: { $title }
strip-sheet = { $id }, revision { $number }, from { $date }
strip-sheet-other = { $id }, revision { $number } of { $date }
on-page = page { $n }
page-of = page { $n } of { $total }
sheet-draft = DRAFT, not for use
sheet-withdrawn = WITHDRAWN
print = Print
sheets-count = { $n ->
    [one] One sheet.
   *[other] { $n } sheets.
}
sheets-paper = A4 or US Letter, upright, at 100 %. Switch the browser’s own headers and footers off.
card-hold = { $most } at most.
card-time-out = { $time } out of the cold at most.
card-shares = Percentages are typical, of the start weight.
card-law = Local codes and licensed practice come first.
card-short = In short: every sentence stands in the guide.
card-scan = Scan the code: the guide says whether this card is current.
card-code = Code to scan: { $address }
card-ask = Ask for revision { $n } or later: this card is out of date if the guide shows a higher number.
of-every-step = of every step
card-continued = (continued)

# What a guide says of a card that was scanned. Filled in by a script.
card-current = Card revision { $n } is current.
card-outdated = This card is out of date since { $date }. Revision { $n }: { $change }
card-outdated-plain = This card is out of date since { $date }. The guide is at revision { $n }.
card-newer = The card is newer than this page: load the page again.
card-of-draft = Revision { $n } is a draft of { $date }, not for use. Ask which card counts.
card-of-withdrawn = This guide is withdrawn. Take the card down.

# The class sheet
class-name = Name
class-group = Group
class-date = Date
class-lot = Lot
class-began = Began
class-ended = Ended
class-start-cold = Warmest point at the start
class-scale = ☐ Scale checked  ☐ trays tared
class-table = { $piece }: weigh every piece
class-table-on = Weigh every piece, continued
class-percent = % of the start
class-start-weight = Start weight, before the first cut
class-sum = All pieces together
class-loss = Lost: start weight less A
class-check = A and B: the start weight
class-check-note = Percent is always of the start weight, never of the sum of the pieces. More lost than expected: look for a tray that was not weighed. More out than in: check the tare.
# A newer edition of the site. What stands in square brackets is filled in by the script of the page.
news-newer = There is a newer edition. You are reading the earlier one.
news-here = This guide changed: revision { $number }, in force since { $date }.
news-here-draft = This guide has a new draft: revision { $number }, of { $date }.
news-withdrawn = This guide is withdrawn: do not work from it.
news-gone = This guide is no longer among the guides: do not work from it.
news-too = Other guides changed too.
news-none = No guide has a new revision.
news-others = Changed: { $guides }.
news-other = { $title }, revision { $number }
news-other-withdrawn = { $title }, withdrawn
news-other-gone = { $title }, gone
news-more = and { $n } more
news-load = Load it
news-loading = Loading
news-later = Not now
news-elsewhere = A newer edition was loaded in another window. You are reading the earlier one.

# What is kept on a device
offline-title = Without a network
offline-all-note = Open any page once while there is a network, and wait a minute. All pages are then kept on the device, { $size }. They open without a network, with search and pictures.
offline-choice-note = The whole site is { $size }, too much to keep unasked. Search, the list of pieces and this page, { $shell }, are kept on the first visit. Choose here what else this device keeps.
offline-needs-script = To keep pages, this site needs script, which is off here. Every page can still be read while there is a network.
offline-looking = Looking at what is kept.
offline-folder = Opened from a folder: everything is here already, and nothing needs a network.
offline-unable = This browser cannot keep pages. Take another browser, or the site as a folder.
offline-insecure = Pages are kept only from an address that begins with https. Ask whoever serves this site, or take the site as a folder.
offline-keeping = Keeping pages: { $done } of { $total }.
offline-kept = Everything is kept on this device: { $files } files, { $size }, since { $since }.
offline-kept-choice = Kept on this device: { $files } files, { $size }, since { $since }.
offline-missing = This page is not kept on this device, and there is no network: { $page }
offline-trouble-network = Not everything could be fetched. What was kept before is whole. Come back while there is a network.
offline-trouble-space = There is no room on this device. What was kept before is whole. Make room, then try again.
offline-trouble-changed = What the server sends is not what was published: { $page }. Perhaps a newer edition is being put up. What was kept before is whole. Try again in a minute.
offline-trouble-newer = Load the newer edition first, then choose.
offline-again = Try again
offline-device = On this device
offline-parts = How much it is
offline-choose = Choose
offline-part-keep = Keep { $name }
offline-part-remove = Remove { $name }
offline-part-kept = kept
offline-part-not = not kept
offline-guides-size = { $n ->
    [0] { $size }
    [one] { $n } guide, { $size }
   *[other] { $n } guides, { $size }
}
offline-rest = Other pages and tables
offline-rest-short = the other pages
offline-shell = Home, search, pieces
offline-courses = Courses
offline-stay = So that it stays
offline-stay-note = A device that runs short of room may clear what pages keep. Some phones also clear it after seven days without a visit. On the home screen it stays.
offline-persist = Keep it on this device
offline-persisted = This device has said that it clears nothing of this site by itself.
offline-refused = This device did not promise it. Put the site on the home screen, or open it once a week while there is a network.
offline-install = Put it on the home screen
offline-edition = New editions are told on the page. They never take the place of what you read until you load them.
