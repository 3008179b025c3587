//! State, panels and canvases of the running page: one turn works messages off, one paint follows.

use super::Port;
use super::solving::Slice;
use crate::dom::document;
use crate::effects::Effects;
use crate::error::Result;
use crate::paint::{Layers, LineKey, Painter, paint_starters};
use crate::panels::{Panels, Steady};
use gearswing_app::paper::{Block, form};
use gearswing_app::scene::handles;
use gearswing_app::{
    Effect, Msg, Page, Start, State, curves, detail, drawing, is_working, load_tables,
    ready_to_print, strip, times, update, view,
};

/// More messages than a turn may work off: a loop of effects and messages would hang the page.
const TURN_LIMIT: usize = 10_000;

/// The running page, without its event handlers.
pub(crate) struct Core {
    state: State,
    panels: Panels,
    effects: Effects,
    painter: Painter,
    line_key: LineKey,
    drawing: Layers,
    strip: Layers,
    detail: Layers,
    /// What is printed next is of the leg in hand alone.
    one_leg: bool,
    curves: Layers,
    times: Layers,
    wants_time: bool,
    wants_paint: bool,
    /// What may come after the rest shows an earlier state.
    unsettled: bool,
}

impl Core {
    /// Looks up the nodes and makes the first state.
    pub(crate) fn new(port: &Port, start: Start, effects: Effects) -> Result<Self> {
        let (state, first) = State::new(start);
        let mut core = Self {
            state,
            panels: Panels::mount()?,
            effects,
            painter: Painter::new()?,
            line_key: LineKey::mount()?,
            drawing: Layers::new("drawing")?,
            strip: Layers::new("strip")?,
            detail: Layers::new("detail-canvas")?,
            one_leg: false,
            curves: Layers::new("curves")?,
            times: Layers::new("times")?,
            wants_time: false,
            wants_paint: true,
            unsettled: true,
        };
        let mut late = core.perform(port, first)?;
        let settled = Slice::begin(false)?.answer(&mut core.state)?;
        late.extend(core.perform(port, settled)?);
        core.show()?;
        core.finish(late)?;
        Ok(core)
    }

    /// Whether the next frame has to bring the time.
    pub(crate) fn wants_time(&self) -> bool {
        self.wants_time
    }

    /// Whether there is work for a next frame though no message comes.
    pub(crate) fn wants_frame(&self) -> bool {
        self.wants_time || self.unsettled || is_working(&self.state)
    }

    /// What the page shows now.
    pub(crate) fn page(&self) -> &Page {
        self.panels.page()
    }

    /// What is pressed stays where it is.
    pub(crate) fn steady(&mut self) -> &mut Steady {
        self.panels.steady()
    }

    /// Reads the theme's colors again; everything is to be painted in them.
    pub(crate) fn read_theme(&mut self) -> Result<()> {
        self.painter.read_theme()?;
        self.outdate(true);
        self.line_key.paint(&mut self.painter)
    }

    /// Notes that all canvases show an earlier state; `wholly`: also what else would stay.
    fn outdate(&mut self, wholly: bool) {
        for layers in [
            &mut self.drawing,
            &mut self.strip,
            &mut self.detail,
            &mut self.curves,
            &mut self.times,
        ] {
            layers.outdate(wholly);
        }
    }

    /// Works messages off until there are none, patches the page and performs the effects.
    pub(crate) fn turn(
        &mut self,
        port: &Port,
        mut next: impl FnMut() -> Option<Msg>,
    ) -> Result<()> {
        let mut late = Vec::new();
        let mut any = false;
        let goes_on = is_working(&self.state);
        let slice = Slice::begin(goes_on)?;
        for _ in 0..TURN_LIMIT {
            let Some(msg) = next() else { break };
            any = true;
            if matches!(msg, Msg::Frame { .. }) {
                self.wants_time = false;
            }
            self.panels.before(&msg)?;
            let effects = update(&mut self.state, msg);
            // Before the results are worked out: the document's text is among the effects.
            late.extend(self.perform(port, effects)?);
            let effects = slice.solve(&mut self.state)?;
            late.extend(self.perform(port, effects)?);
        }
        if !any && goes_on {
            let effects = slice.solve(&mut self.state)?;
            late.extend(self.perform(port, effects)?);
            // what is worked out so far is shown when all is there
            any = !is_working(&self.state);
        }
        if any {
            self.show()?;
            self.wants_paint = true;
        }
        self.finish(late)
    }

    /// Notes whether a canvas is in the window.
    pub(crate) fn see(&mut self, id: &str, seen: bool) -> Result<()> {
        match id {
            "starters" if seen => return paint_starters(&mut self.painter),
            "drawing" => self.drawing.see(seen),
            "strip" => self.strip.see(seen),
            "detail-canvas" => self.detail.see(seen),
            "curves" => self.curves.see(seen),
            "times" => self.times.see(seen),
            _ => {}
        }
        Ok(())
    }

    /// Paints what can be seen and shows an earlier state; `anyway`: all that can be seen.
    ///
    /// The focusable points and the canvases in words cost the browser as much as the drawing and
    /// show nothing by themselves. They follow in the first frame in which nothing else has moved;
    /// only the point that has the focus keeps up.
    pub(crate) fn paint(&mut self, anyway: bool) -> Result<()> {
        if anyway {
            self.line_key.paint(&mut self.painter)?;
        }
        let changed = std::mem::take(&mut self.wants_paint) || anyway;
        if changed {
            self.outdate(anyway);
        }
        self.canvases()?;
        if changed && !self.unsettled {
            self.panels.unsettled()?;
        }
        let settles = !changed && self.unsettled;
        self.unsettled = changed;
        if settles {
            self.panels
                .settle(&handles(&self.state), load_tables(&self.state))?;
        }
        Ok(())
    }

    /// What is printed next is of the leg in hand alone, or of all again.
    pub(crate) fn prints_one_leg(&mut self, one_leg: bool) {
        self.one_leg = one_leg;
    }

    /// The form on paper, of all legs or of the one in hand, with all results worked out.
    pub(crate) fn form(&mut self, port: &Port, date: &str) -> Result<Vec<Block>> {
        let effects = ready_to_print(&mut self.state);
        let late = self.perform(port, effects)?;
        self.finish(late)?;
        self.show()?;
        Ok(form(&self.state, date, !self.one_leg))
    }

    /// Paints what shows an earlier state and is in the window.
    fn canvases(&mut self) -> Result<()> {
        if self.drawing.is_due() {
            let scene = drawing(&self.state);
            self.panels.focused_point(&scene.handles)?;
            self.drawing.paint(&mut self.painter, &scene)?;
        }
        if self.strip.is_due() {
            let scene = strip(&self.state);
            self.strip.paint(&mut self.painter, &scene)?;
        }
        if self.detail.is_due() {
            let scene = detail(&self.state);
            self.detail.paint(&mut self.painter, &scene)?;
        }
        if self.curves.is_due() {
            let scene = curves(&self.state);
            self.panels.curves_height(scene.height_px)?;
            self.curves.paint(&mut self.painter, &scene)?;
        }
        if self.times.is_due() {
            let scene = times(&self.state);
            self.panels.times_height(scene.height_px)?;
            self.times.paint(&mut self.painter, &scene)?;
        }
        Ok(())
    }

    /// What is done outside of the page.
    pub(crate) fn effects(&mut self) -> &mut Effects {
        &mut self.effects
    }

    /// Notes what is looked at for a reload.
    pub(crate) fn note_looking(&mut self) -> Result<()> {
        self.effects.note_looking(&self.state.looking())
    }

    fn show(&mut self) -> Result<()> {
        let page = view(&self.state);
        self.effects.note_sheet(page.sheet)?;
        self.panels.patch(page)
    }

    /// Performs what cannot wait; hands back what needs the patched page.
    fn perform(&mut self, port: &Port, effects: Vec<Effect>) -> Result<Vec<Effect>> {
        let mut late = Vec::new();
        for effect in effects {
            match effect {
                Effect::AskFrame => self.wants_time = true,
                Effect::FocusField { .. } => late.push(effect),
                Effect::SetTheme(theme) => {
                    self.effects.theme(theme)?;
                    self.read_theme()?;
                }
                Effect::SetTitle { text } => {
                    let document = document()?;
                    if document.title() != text {
                        document.set_title(&text);
                    }
                }
                other => self.effects.perform(port, other)?,
            }
        }
        Ok(late)
    }

    fn finish(&mut self, late: Vec<Effect>) -> Result<()> {
        for effect in late {
            if let Effect::FocusField { path } = effect {
                self.panels.focus_field(&path)?;
            }
        }
        Ok(())
    }
}
