package sheet

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// cutting draws how the stock is cut, boards that are cut alike together.
func (g *drawing) cutting() (Picture, error) {
	if g.report.Shop == nil {
		return Picture{}, &measure.Error{Field: "report", Class: measure.ErrUnknown, Want: "a report with its shop"}
	}
	c := &g.report.Shop.Cutting
	if c.Err != nil {
		return Picture{}, c.Err
	}
	k, rests := g.cuts(c)
	if len(k.Boards) == 0 {
		return Picture{}, &measure.Error{Field: "stock", Class: measure.ErrUnknown, Want: "boards that pieces are cut from"}
	}
	return k.draw(rests)
}

// cuts returns the boards that are cut, and what the cut list says is left over of
// each, in metres.
func (g *drawing) cuts(c *dock.Cutting) (Cutting, []float64) {
	var rests []float64
	k := Cutting{Units: g.units}
	var first []lumber.Sawn // of each kind
	for _, b := range c.Boards {
		if len(b.Pieces) == 0 {
			continue
		}
		if i := slices.IndexFunc(first, func(o lumber.Sawn) bool { return cutAlike(o, b) }); i >= 0 {
			k.Boards[i].Count++
			continue
		}
		out := Board{Size: b.Section, Length: b.Length, Count: 1, Kerf: c.Saw.Kerf, Trim: b.Pieces[0].At}
		for _, p := range b.Pieces {
			out.Pieces = append(out.Pieces, Piece{Name: p.Name, Length: p.Length})
		}
		first, k.Boards, rests = append(first, b), append(k.Boards, out), append(rests, offcuts(b))
	}
	return k, rests
}

// offcuts returns what the cut list says is left over of a board, in metres.
func offcuts(b lumber.Sawn) float64 {
	left := 0.0
	for _, o := range b.Offcuts {
		left += o.Length
	}
	return left
}

// cutAlike reports whether two boards look alike when cut.
func cutAlike(a, b lumber.Sawn) bool {
	same := func(x, y float64) bool { return math.Abs(x-y) < 1e-6 }
	return a.Section == b.Section && same(a.Length, b.Length) && slices.EqualFunc(a.Pieces, b.Pieces, func(p, q lumber.Piece) bool {
		return p.Name == q.Name && same(p.At, q.At) && same(p.Length, q.Length)
	})
}

// oddsFrom returns the odds of n days from the first on, whatever their year: nil where
// one of them has none.
func oddsFrom(first time.Time, n int, days []season.DayOdds) []float64 {
	by := map[string]float64{}
	const day = "01-02"
	for _, o := range slices.Backward(days) { // of two, the first
		by[o.Date.Format(day)] = o.Carries
	}
	out := make([]float64, n)
	for i := range out {
		odds, ok := by[first.AddDate(0, 0, i).Format(day)]
		if !ok {
			return nil
		}
		out[i] = odds
	}
	return out
}

// winter draws the ice through the winter.
func (g *drawing) winter() (Picture, error) {
	s := g.report.Season
	switch {
	case s == nil || s.NoOdds != nil && len(s.Middle) == 0:
		return Picture{}, &measure.Error{Field: "season", Class: measure.ErrUnknown, Want: "a table of daily temperatures of five winters or more"}
	case len(s.Middle) == 0:
		return Picture{}, &measure.Error{Field: "season", Class: measure.ErrUnknown, Want: "five winters whole from September to May"}
	}
	w := Winter{Units: g.units, First: s.First, Thin: s.Thin, Middle: s.Middle, Thick: s.Thick, Band: "what nine and what one of ten past winters had, by the model"}
	for _, c := range s.Loads {
		w.Asked = append(w.Asked, Asked{Name: c.Load, Thick: c.Need, Odds: oddsFrom(w.First, len(w.Middle), c.Days)})
	}
	last := w.First.AddDate(0, 0, len(w.Middle)-1)
	for _, h := range s.Holes {
		if !h.Date.Before(w.First) && !h.Date.After(last) {
			w.Holes = append(w.Holes, Drilled{h.Date, h.Clear + h.White})
		}
	}
	came := "ice-on, half of the winters"
	if !s.Came.IsZero() {
		came = "ice-on, this winter by the model"
	}
	for _, m := range []struct {
		when time.Time
		name string
	}{{s.On.P50, came}, {s.Out.P50, "ice-out, half of the winters"}} {
		if day := m.when.Sub(w.First).Hours() / 24; !m.when.IsZero() && day >= 0 && day < float64(len(w.Middle)-1) {
			w.Marks = append(w.Marks, Day{m.when, m.name})
		}
	}
	return w.Draw()
}

// righting draws the righting curve toward the worst crowd.
func (g *drawing) righting() (Picture, error) {
	c, err := g.dock.Righting()
	if err != nil {
		return Picture{}, err
	}
	return Righting{
		Units: g.units, Heel: c.Heel, Rights: c.Rights, Heels: c.Heels, Rest: c.AtRest, DeckWet: c.Wet,
		Load: fmt.Sprintf("%s, %s", g.standing(), measure.Mass.Format(c.Mass, g.units)),
	}.Draw()
}

// moments draws the member whose bending uses most of what its wood takes.
func (g *drawing) moments() (Picture, error) {
	e, err := g.report.Envelope()
	if err != nil {
		return Picture{}, err
	}
	d, err := e.Diagram()
	if err != nil {
		return Picture{}, err
	}
	m := Moments{Units: g.units, Member: d.Member, When: d.Situation, From: d.From, Length: d.Length, X: d.X, Moment: d.Moment, Limit: d.Sags, LimitHog: d.Hogs}
	for _, p := range d.Points {
		m.Points = append(m.Points, PointLoad{p.From, p.P})
	}
	for _, p := range d.Pushes {
		m.Points = append(m.Points, PointLoad{p.At, -p.Force})
	}
	for _, l := range d.Spread {
		m.Lines = append(m.Lines, LineLoad{l.From, l.To, l.Q})
	}
	return m.Draw()
}
