//! What each step of a guide owes: cautions, protection, and protection that it forbids, each with its reason.
//!
//! Computed from the tools of the step, how the blade is drawn, the parts that the step names, frees or cuts, the
//! product and the species. What could not be read demands nothing.
//!
//! Of a choice of tools one is taken, and nobody knows which. So all of them demand their cautions, and what any of
//! them forbids is not worn. Protection that one demands and another of the same choice forbids holds only for who
//! takes the one; every other demand holds for the step. Tools that are used together must fit each other.

use crate::model::builtin::demands::{Condition, WearDemand};
use crate::model::procedure::{CountSpec, ToolChoice};
use crate::model::stated::{Spanned, Stated};
use crate::model::words::Product;
use crate::model::{Guidebook, Procedure, Step};

use super::anatomy::{Anatomy, group_of};
use super::travel::bare;

/// Why something is demanded.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Because<'a> {
    /// A tool, by its id.
    Tool(&'a str),
    /// The blade comes toward the body.
    DrawnToBody,
    /// The step names, frees or cuts this part, by its id.
    Part(&'a str),
    /// Fish that is eaten raw.
    RawFish,
    /// A species that forms histamine, by its id.
    Histamine(&'a str),
    /// A cut glove meets food that is eaten raw.
    GloveOnRaw,
    /// Some other condition of the caution.
    Condition,
}

/// One thing that is demanded or advised.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Demand<'a, T> {
    /// What.
    pub what: T,
    /// Why.
    pub because: Because<'a>,
}

/// What one step owes.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StepDemands<'a> {
    /// Cautions demanded, each once.
    pub cautions: Vec<Demand<'a, &'a str>>,
    /// Cautions advised, each once, none that is demanded.
    pub advised_cautions: Vec<Demand<'a, &'a str>>,
    /// Protection demanded.
    pub wear: Vec<Demand<'a, WearDemand>>,
    /// Protection that one tool of a choice demands and another of the same choice forbids: for who takes the one.
    pub wear_where_taken: Vec<Demand<'a, WearDemand>>,
    /// Protection advised.
    pub advised_wear: Vec<Demand<'a, WearDemand>>,
    /// Protection forbidden, with the tool that forbids it.
    pub never: Vec<(&'a str, &'a str)>,
    /// Demands for protection that no glove or guard can meet, because a tool that is used with it forbids it.
    pub contradictions: Vec<Contradiction<'a>>,
}

/// A demand for protection that another tool of the same step forbids.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contradiction<'a> {
    /// The demand.
    pub demand: Demand<'a, WearDemand>,
    /// The tool that forbids what would meet it.
    pub forbidden_by: &'a str,
}

/// The tool that forbids every set that would meet a demand, or the first of several such tools.
fn against<'a>(demand: &WearDemand, never: &[(&'a str, &'a str)]) -> Option<&'a str> {
    let forbids = |id: &String| never.iter().find(|(never, _)| never == id).map(|(_, tool)| *tool);
    let hits: Option<Vec<&str>> = demand.any_of.iter().map(|set| set.iter().find_map(forbids)).collect();
    hits.and_then(|tools| tools.first().copied())
}

/// The tools that hold for a step, each a choice of one or several: its own, or those beside `steps`; `None` when they
/// could not be read.
#[must_use]
pub fn choices_of<'a>(procedure: &'a Procedure, step: &'a Step) -> Option<&'a [Spanned<ToolChoice>]> {
    in_force(&step.tools, &procedure.tools)
}

/// The tools that hold for a step, all tools of a choice among them; `None` when they could not be read.
#[must_use]
pub fn tools_of<'a>(procedure: &'a Procedure, step: &'a Step) -> Option<Vec<&'a Spanned<String>>> {
    Some(choices_of(procedure, step)?.iter().flat_map(|choice| &choice.value.any_of).collect())
}

/// What is worn in a step: its own list, or the one beside `steps`; `None` when it could not be read.
#[must_use]
pub fn wear_of<'a>(procedure: &'a Procedure, step: &'a Step) -> Option<&'a [Spanned<String>]> {
    in_force(&step.wear, &procedure.wear)
}

fn in_force<'a, T>(own: &'a Stated<Vec<T>>, beside: &'a Stated<Vec<T>>) -> Option<&'a [T]> {
    match (own, beside) {
        (Stated::Given(list), _) | (Stated::Absent, Stated::Given(list)) => Some(&list.value),
        (Stated::Absent, Stated::Absent) => Some(&[]),
        (Stated::Broken, _) | (Stated::Absent, Stated::Broken) => None,
    }
}

/// True when a caution covers a step: it stands on the step, or beside `steps`.
#[must_use]
pub fn carries(procedure: &Procedure, step: &Step, caution: &str) -> bool {
    step.cautions.iter().chain(&procedure.cautions).any(|own| own.value == caution)
}

/// The class of product of a guide: stated, or that of its species; fish also where the species is like a fish.
#[must_use]
pub fn product_of(book: &Guidebook, procedure: &Procedure) -> Option<Product> {
    if procedure.product.is_broken() {
        return None;
    }
    book.product_of(procedure).or_else(|| {
        let group = group_of(book, procedure.species.value()?)?;
        group.ends_with("fish").then_some(Product::Fish)
    })
}

/// What is the same for all steps of a procedure.
#[derive(Debug, Clone)]
pub struct Demands<'a> {
    book: &'a Guidebook,
    procedure: &'a Procedure,
    anatomy: Option<Anatomy<'a>>,
    product: Option<Product>,
    histamine: bool,
    profile: Option<&'a str>,
}

impl<'a> Demands<'a> {
    /// Looks up what holds for a procedure.
    #[must_use]
    pub fn of(book: &'a Guidebook, procedure: &'a Procedure) -> Self {
        let species = procedure.species.value().and_then(|species| book.builtin.species.get(species));
        Self {
            book,
            procedure,
            anatomy: Anatomy::of_procedure(book, procedure),
            product: product_of(book, procedure),
            histamine: species.is_some_and(|species| species.histamine),
            profile: book.limits.value().map(String::as_str),
        }
    }

    /// What a step owes; `None` when its tools could not be read.
    #[must_use]
    pub fn of_step(&self, step: &'a Step) -> Option<StepDemands<'a>> {
        let mut owed = StepDemands::default();
        // Beside each demand and each ban stands the choice that it comes from; a condition is none.
        let mut wear: Vec<(Option<usize>, Demand<'a, WearDemand>)> = Vec::new();
        let mut bans: Vec<(usize, (&str, &str))> = Vec::new();
        for (at, choice) in choices_of(self.procedure, step)?.iter().enumerate() {
            for tool in &choice.value.any_of {
                self.add_tool(&tool.value, &mut owed);
            }
            wear.extend(owed.wear.drain(..).map(|demand| (Some(at), demand)));
            bans.extend(owed.never.drain(..).map(|ban| (at, ban)));
        }
        for (id, caution) in &self.book.builtin.cautions {
            let Some(because) = caution.demanded_when.iter().find_map(|condition| self.holds(condition, step)) else { continue };
            add(&mut owed.cautions, id, &because);
            let demand = |what: &WearDemand| Demand { what: what.clone(), because: because.clone() };
            wear.extend(caution.wear.iter().map(|what| (None, demand(what))));
            owed.advised_wear.extend(caution.advised_wear.iter().map(demand));
        }
        owed.never = bans.iter().map(|(_, ban)| *ban).collect();
        for (choice, demand) in wear {
            let own = |tool: &str| demand.because == Because::Tool(tool);
            let together: Vec<_> = bans.iter().filter(|(at, (_, tool))| choice != Some(*at) || own(tool)).map(|(_, ban)| *ban).collect();
            if let Some(forbidden_by) = against(&demand.what, &together) {
                owed.contradictions.push(Contradiction { demand: demand.clone(), forbidden_by });
            } else if against(&demand.what, &owed.never).is_some() {
                owed.wear_where_taken.push(demand);
                continue;
            }
            owed.wear.push(demand);
        }
        owed.advised_cautions.retain(|advised| !owed.cautions.iter().any(|demand| demand.what == advised.what));
        Some(owed)
    }

    /// The built-in demands of a tool, and what the shop demands beyond them.
    fn add_tool(&self, tool: &'a str, owed: &mut StepDemands<'a>) {
        let because = Because::Tool(tool);
        let demand = |what: WearDemand| Demand { what, because: Because::Tool(tool) };
        if let Some(builtin) = self.book.builtin.tools.get(tool) {
            let demands = &builtin.demands;
            demands.cautions_under(self.profile).for_each(|caution| add(&mut owed.cautions, caution, &because));
            demands.advised_cautions.iter().for_each(|caution| add(&mut owed.advised_cautions, caution, &because));
            owed.wear.extend(demands.wear.iter().cloned().map(demand));
            owed.advised_wear.extend(demands.advised_wear.iter().cloned().map(demand));
            owed.never.extend(demands.never.iter().map(|never| (never.as_str(), tool)));
        }
        // What the shop's own tool names and nobody knows is told where it stands, and demands nothing.
        if let Some(own) = self.book.tools.get(tool) {
            let known =
                |id: &Spanned<String>| self.book.builtin.cautions.contains_key(&id.value) || self.book.cautions.contains_key(&id.value);
            let wear = |id: &&Spanned<String>| self.book.builtin.wear.contains_key(&id.value);
            own.cautions.iter().filter(|id| known(id)).for_each(|caution| add(&mut owed.cautions, &caution.value, &because));
            owed.wear.extend(own.wear.iter().filter(wear).map(|wear| demand(WearDemand::one(&wear.value))));
            owed.never.extend(own.never.iter().filter(wear).map(|never| (never.value.as_str(), tool)));
        }
    }

    /// The reason for which a condition holds in a step, when it does.
    fn holds(&self, condition: &'a Condition, step: &'a Step) -> Option<Because<'a>> {
        let group = self.anatomy.as_ref().map(|anatomy| anatomy.group);
        let raw = self.procedure.served_raw.value().copied().unwrap_or(false);
        let draws = step.draws_toward_body.value().copied().unwrap_or(false);
        let worn = || wear_of(self.procedure, step).unwrap_or(&[]);
        let fits = condition.group.as_deref().is_none_or(|wanted| group == Some(wanted))
            && condition.product.is_none_or(|wanted| self.product == Some(wanted))
            && condition.served_raw.is_none_or(|wanted| wanted == raw)
            && condition.histamine.is_none_or(|wanted| wanted == self.histamine)
            && (!condition.draws_toward_body || draws)
            && condition.wear.iter().all(|wanted| worn().iter().any(|own| own.value == *wanted));
        if !fits {
            return None;
        }
        if !condition.anatomy.is_empty() {
            return self.part_in(step, &condition.anatomy).map(Because::Part);
        }
        Some(if condition.draws_toward_body {
            Because::DrawnToBody
        } else if !condition.wear.is_empty() {
            Because::GloveOnRaw
        } else if condition.served_raw.is_some() {
            Because::RawFish
        } else if let (Some(true), Some(species)) = (condition.histamine, self.procedure.species.value()) {
            Because::Histamine(species)
        } else {
            Because::Condition
        })
    }

    /// The first of these parts that the step names, frees or cuts.
    fn part_in(&self, step: &'a Step, parts: &[String]) -> Option<&'a str> {
        let anatomy = self.anatomy.as_ref()?;
        let wanted = |name: &'a str| anatomy.id_of(name).filter(|id| parts.iter().any(|part| part == id));
        let called = |piece: &'a Spanned<String>| wanted(bare(&piece.value, anatomy.species));
        let named = || step.anatomy.iter().chain(&step.cuts_through).find_map(|name| wanted(&name.value));
        let freed = || {
            step.give.iter().find_map(|output| {
                let none = |number: &CountSpec| matches!(number, CountSpec::Between(range) if range.high == 0);
                let mut counted = output.counts.iter().filter(|count| !count.number.value().is_some_and(none));
                let held = output.holds.iter().find_map(|name| wanted(&name.value));
                held.or_else(|| counted.find_map(|count| wanted(&count.part.value))).or_else(|| called(&output.piece))
            })
        };
        named().or_else(freed).or_else(|| step.take.iter().find_map(called))
    }
}

/// Adds a caution that is not there yet.
fn add<'a>(list: &mut Vec<Demand<'a, &'a str>>, caution: &'a str, because: &Because<'a>) {
    if !list.iter().any(|demand| demand.what == caution) {
        list.push(Demand { what: caution, because: because.clone() });
    }
}
