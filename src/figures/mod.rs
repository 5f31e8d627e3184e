//! Tables and drawings of a guidebook as values: yield tables, shares of steps, the use bar, the weight flow, the cold clock.
//!
//! It imports the model and the analysis and knows nothing of HTML, templates or words of an interface. Numbers come
//! out as they are printed (`numbers` and `units` hold the one rounding rule), beside what a drawing needs.

pub mod answer;
pub mod cold_clock;
pub mod cold_drawing;
pub mod cut_map;
pub mod cut_map_drawing;
pub mod cut_map_lanes;
pub mod duration;
pub mod flow_drawing;
pub mod flow_layout;
mod hatches;
pub mod kind;
pub mod numbers;
pub mod outputs;
pub mod scan_code;
pub mod share;
pub mod sheets;
pub mod step_bar;
pub mod svg;
pub mod type_measure;
pub mod units;
pub mod yield_table;

pub use kind::Kind;
pub use outputs::{Output, StepFigures};
pub use share::{Figure, Worked};
pub use step_bar::StepBar;
pub use yield_table::{YieldGroup, YieldRow, YieldTable};
