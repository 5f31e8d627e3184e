//! The fixed words of the format, each list a type that knows its spellings.

macro_rules! words {
    ($($(#[$doc:meta])* $name:ident { $($(#[$case_doc:meta])* $case:ident = $word:literal,)+ })*) => { $(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$case_doc])* $case,)+ }

        impl $name {
            /// All words of the list, in the order of the format.
            pub const ALL: &'static [Self] = &[$(Self::$case,)+];

            /// The word as it is written.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$case => $word,)+ }
            }

            /// The case that is written so.
            #[must_use]
            pub fn from_word(word: &str) -> Option<Self> {
                match word { $($word => Some(Self::$case),)+ _ => None }
            }
        }
    )* };
}

words! {
    /// What becomes of a final piece.
    Use {
        /// Sold as it is.
        Retail = "retail",
        /// Goes on to another procedure.
        ForCutting = "for-cutting",
        /// Lean trimmings.
        LeanTrim = "lean-trim",
        /// Fat trimmings.
        FatTrim = "fat-trim",
        /// Bones.
        Bone = "bone",
        /// Skin.
        Skin = "skin",
        /// Offal.
        Offal = "offal",
        /// Not for people to eat.
        Inedible = "inedible",
        /// What the law wants kept apart and destroyed.
        RiskMaterial = "risk-material",
    }
    /// The animal's side.
    Side {
        /// The animal's left.
        Left = "left",
        /// The animal's right.
        Right = "right",
        /// Both.
        Both = "both",
    }
    /// The state of a revision.
    State {
        /// Being written.
        Draft = "draft",
        /// The one to work by.
        InForce = "in-force",
        /// No longer to be used.
        Withdrawn = "withdrawn",
    }
    /// The unit system of a guidebook.
    Units {
        /// Kilograms, degrees Celsius, millimetres.
        Metric = "metric",
        /// Pounds, degrees Fahrenheit, inches.
        Imperial = "imperial",
    }
    /// A class of product, which decides the limits that hold.
    Product {
        /// Meat of cattle, pigs, sheep, goats.
        RedMeat = "red-meat",
        /// Offal.
        Offal = "offal",
        /// Poultry.
        Poultry = "poultry",
        /// Rabbit and hare.
        Rabbit = "rabbit",
        /// Game.
        Game = "game",
        /// Fish.
        Fish = "fish",
        /// Minced meat.
        Minced = "minced",
        /// Meat preparations.
        Preparation = "preparation",
    }
    /// The signal word of a caution.
    Signal {
        /// Will kill or maim.
        Danger = "danger",
        /// Could kill or maim.
        Warning = "warning",
        /// Could hurt.
        Caution = "caution",
        /// Not about injury.
        Notice = "notice",
    }
    /// What a hazard can do.
    Harm {
        /// It can kill.
        Death = "death",
        /// It stays.
        Lasting = "lasting",
        /// It heals.
        Healing = "healing",
        /// It spoils goods or gear.
        Property = "property",
    }
    /// How parasites in fish for raw service are dealt with.
    Parasites {
        /// Frozen as the profile says.
        Frozen = "frozen",
        /// Farmed, with the supplier's letter.
        FarmedWithLetter = "farmed-with-letter",
    }
    /// A kind of anatomical part.
    PartKind {
        /// A bone.
        Bone = "bone",
        /// A muscle.
        Muscle = "muscle",
        /// Connective tissue or fat.
        Tissue = "tissue",
        /// A gland or lymph node.
        Gland = "gland",
    }
    /// A limit that a shop may set stricter.
    LimitKind {
        /// Keeping cold.
        Hold = "hold",
        /// The air of the room.
        Room = "room",
        /// Time out of the cold.
        TimeOut = "time-out",
        /// Receiving.
        Receiving = "receiving",
        /// The water for tools.
        ToolWater = "tool-water",
        /// How often tools are cleaned.
        CleaningInterval = "cleaning-interval",
    }
    /// How time out of the cold counts.
    Clock {
        /// The longest stretch.
        Single = "single",
        /// The sum of all stretches.
        Cumulative = "cumulative",
    }
    /// What a limit is about.
    Stage {
        /// Keeping cold, at work and in store.
        Hold = "hold",
        /// Arriving.
        Receiving = "receiving",
        /// The air of the room.
        Room = "room",
        /// Time out of the cold.
        TimeOut = "time-out",
        /// The water for tools.
        ToolWater = "tool-water",
        /// How often tools are cleaned.
        CleaningInterval = "cleaning-interval",
        /// Cooling what lawfully arrives warm.
        CoolDown = "cool-down",
        /// Keeping frozen.
        Frozen = "frozen",
        /// Keeping hot.
        HotHold = "hot-hold",
        /// Bringing meat into the room.
        BringIn = "bring-in",
        /// Keeping species apart.
        Separation = "separation",
        /// What goes into the mincer.
        Mincing = "mincing",
        /// The age at which meat is minced.
        MinceAge = "mince-age",
        /// Freezing fish that is eaten raw.
        ParasiteFreezing = "parasite-freezing",
        /// Histamine in fish.
        Histamine = "histamine",
        /// Parts that the law wants kept apart and destroyed.
        RiskMaterial = "risk-material",
        /// Vacuum packing.
        VacuumPack = "vacuum-pack",
        /// Who is too young for a machine.
        YoungWorker = "young-worker",
        /// Gloves that touch food.
        GloveOnFood = "glove-on-food",
        /// Words on the label.
        Label = "label",
    }
    /// What a limit measures. Core and surface are never held against each other.
    Measure {
        /// Inside the meat or fish.
        Core = "core",
        /// On its surface.
        Surface = "surface",
        /// The air.
        Air = "air",
        /// The water.
        Water = "water",
        /// No temperature.
        None = "none",
    }
    /// What stands behind a rule.
    Force {
        /// The law.
        Law = "law",
        /// Guidance of an authority.
        Guidance = "guidance",
        /// A voluntary standard.
        Standard = "standard",
        /// It was law once: shown for reference, never checked.
        Repealed = "repealed",
    }
    /// How a fact was verified when it was written down.
    Verified {
        /// The passage was read.
        Read = "read",
        /// It was read in a code that adopts it.
        Adopted = "adopted",
        /// It was read in a text that reports it.
        Secondary = "secondary",
        /// It was written from memory: shown, and never a fault by itself.
        Memory = "memory",
        /// It is common practice, without a source.
        Practice = "practice",
    }
    /// Whether prices hold tax.
    Tax {
        /// Tax is in them.
        With = "with",
        /// Tax is not in them.
        Without = "without",
    }
}
