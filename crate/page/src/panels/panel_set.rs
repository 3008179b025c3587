//! The parts of the page beside the canvases: each looks its nodes up once and then writes only
//! what differs.
use super::steady::Steady;
use super::{
    answers, changes, data, drawing, field, files, foot, handles, head, loads, notices, sheets,
    steady, steps, stopped, times, transport, verdicts, working,
};
use crate::error::Result;
use gearswing_app::msg::Field;
use gearswing_app::scene::Handle;
use gearswing_app::{Msg, Page, TitledTable};

/// All panels, and what they show.
pub(crate) struct Panels {
    page: Page,
    answers: answers::Answers,
    changes: changes::Changes,
    data: data::Data,
    drawing: drawing::Drawing,
    files: files::Files,
    foot: foot::Foot,
    handles: handles::Handles,
    head: head::TopRow,
    loads: loads::Loads,
    notices: notices::Notices,
    sheets: sheets::Sheets,
    steady: steady::Steady,
    steps: steps::Steps,
    stopped: stopped::Stopped,
    times: times::Times,
    transport: transport::TransportPanel,
    verdicts: verdicts::Verdicts,
    working: working::Working,
}

impl Panels {
    /// Looks up the nodes.
    pub(crate) fn mount() -> Result<Self> {
        Ok(Self {
            page: Page::default(),
            answers: answers::Answers::mount()?,
            changes: changes::Changes::mount()?,
            data: data::Data::mount()?,
            drawing: drawing::Drawing::mount()?,
            files: files::Files::mount()?,
            foot: foot::Foot::mount()?,
            handles: handles::Handles::mount()?,
            head: head::TopRow::mount()?,
            loads: loads::Loads::mount()?,
            notices: notices::Notices::mount()?,
            sheets: sheets::Sheets::mount()?,
            steady: steady::Steady::mount()?,
            steps: steps::Steps::mount()?,
            stopped: stopped::Stopped::mount()?,
            times: times::Times::mount()?,
            transport: transport::TransportPanel::mount()?,
            verdicts: verdicts::Verdicts::mount()?,
            working: working::Working::mount()?,
        })
    }

    /// What is pressed stays where it is.
    pub(crate) fn steady(&mut self) -> &mut Steady {
        &mut self.steady
    }

    /// What is shown.
    pub(crate) fn page(&self) -> &Page {
        &self.page
    }

    /// Notes what a message means for the panels: the text of a field that is being typed in is
    /// left alone until it is taken over.
    pub(crate) fn before(&mut self, msg: &Msg) -> Result<()> {
        match msg {
            Msg::Field(Field::Draft { path, .. }) => self.data.typing(Some(path)),
            Msg::Field(Field::Focus { path }) => {
                self.data.help(path);
                Ok(())
            }
            Msg::Field(_) | Msg::History(_) => self.data.typing(None),
            _ => Ok(()),
        }
    }

    /// Shows a page.
    pub(crate) fn patch(&mut self, page: Page) -> Result<()> {
        let stood = self.steady.stand()?;
        self.working.patch(&page)?;
        self.notices.patch(&page)?;
        self.head.patch(&page)?;
        self.files.patch(&page)?;
        self.verdicts.patch(&page)?;
        self.sheets.patch(&page)?;
        self.answers.patch(&page)?;
        self.changes.patch(&page)?;
        self.drawing.patch(&page)?;
        self.stopped.patch(&page)?;
        self.times.patch(&page)?;
        self.transport.patch(&page)?;
        self.steps.patch(&page)?;
        self.data.patch(&page)?;
        self.foot.patch(&page)?;
        self.page = page;
        self.steady.keep(stood)
    }

    /// Shows what may come after the rest: the canvases in words, the tables of loads, and the
    /// focusable points of the drawing.
    pub(crate) fn settle(&mut self, points: &[Handle], tables: Vec<TitledTable>) -> Result<()> {
        self.drawing.describe(&self.page)?;
        self.loads.patch(tables)?;
        self.handles.patch(points)?;
        self.handles.busy(false)
    }

    /// Notes that `settle` is still to come.
    pub(crate) fn unsettled(&self) -> Result<()> {
        self.handles.busy(true)
    }

    /// Puts the point of the drawing that has the focus, if one has, where it is drawn.
    pub(crate) fn focused_point(&mut self, points: &[Handle]) -> Result<()> {
        self.handles.patch_focused(points)
    }

    /// Gives the curves' canvas its height.
    pub(crate) fn curves_height(&mut self, height_px: f64) -> Result<()> {
        self.drawing.curves_height(height_px)
    }

    /// Gives the canvas of the gear against time its height.
    pub(crate) fn times_height(&mut self, height_px: f64) -> Result<()> {
        self.times.height(height_px)
    }

    /// Puts the focus on a field.
    pub(crate) fn focus_field(&self, path: &str) -> Result<()> {
        field::focus(path)
    }
}
