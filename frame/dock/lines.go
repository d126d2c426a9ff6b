package dock

import (
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// A Lines is the dock in its lines from the side, in plain numbers. Heights count
// from the water as it stood when the plan was measured, up; heights and lengths are
// in m.
type Lines struct {
	Deck      float64 // height of the deck's lowest corner, nobody aboard
	Draft     float64 // of the deepest float
	Bed       float64 // depth of the lake bed
	Low, High float64 // lowest and highest water
	Leads     []Lead

	// Storm tells the wind that the lines are checked for, in the plan's units, and what
	// stands beside it; nil where the plan has none.
	Storm []string
}

// A Lead is the way of one line from the dock to what it runs to, straight, in m.
type Lead struct {
	Name, To string
	Cleat    [3]float64 // where it leaves the dock: along and across from where the tape hooks on, and up
	Foot     [3]float64 // where it ends, likewise
	Made     float64    // length of its pieces together, by tape; 0 where the plan does not say
}

// At returns how far apart, m, the ends of a line lie with the water risen by a
// length, m, by geometry: a line
// that is shorter than this is under the water's pull.
func (l Lead) At(rise float64) float64 {
	up := l.Foot[2] - l.Cleat[2] - rise
	return math.Sqrt((l.Foot[0]-l.Cleat[0])*(l.Foot[0]-l.Cleat[0]) + (l.Foot[1]-l.Cleat[1])*(l.Foot[1]-l.Cleat[1]) + up*up)
}

// Lines returns the dock in its lines, by plane geometry, at the draft that
// [Dock.Empty] has. What the lines are made of need not be known;
// the error is for a plan that does not say where they run, how deep and how high
// the water is, or how the dock floats.
func (d *Dock) Lines() (*Lines, error) {
	fl, err := d.afloat()
	if err != nil {
		return nil, err
	}
	m, site := &d.plan.Mooring, &d.plan.Site
	if len(m.Lines) == 0 {
		return nil, notKnown("mooring.lines", "each line's corner and where it ends")
	}
	if err := (rests{on(site.LevelLow), on(site.LevelHigh), on(site.Depth)}).err(); err != nil {
		return nil, err
	}
	u, err := fl.state.Unit(fl.deepest)
	if err != nil {
		return nil, err
	}
	out := &Lines{Deck: fl.edge, Draft: u.Draft, Bed: site.Depth.Value, Low: site.LevelLow.Value, High: site.LevelHigh.Value}
	if !(out.Low <= out.High) {
		return nil, &measure.Error{Field: site.LevelHigh.Path, Text: site.LevelHigh.Text, Class: measure.ErrRange, Want: "a highest level over the lowest"}
	}
	told, calm := d.blow()
	if out.Storm = told; calm != nil {
		out.Storm = append(out.Storm, measure.RestateError(calm, d.system()).Error())
	}
	for i := range m.Lines {
		l := &m.Lines[i]
		lead := Lead{Name: lineName(l, i), To: l.To.Value}
		at, ok := d.cleat(i)
		if !ok {
			return nil, rests{on(l.Corner)}.err()
		}
		lead.Cleat = [3]float64{at[0], at[1], out.Deck}
		var t moor.Tie
		rs, err := d.foot(&t, l)
		if err != nil {
			return nil, err
		}
		// The first three say where it is; how it holds is not asked.
		if err := rs[:3].err(); err != nil {
			return nil, err
		}
		lead.Foot = [3]float64{t.Foot[0] + d.length/2, t.Foot[1] + d.width/2, t.FootZ}
		for k := range l.Pieces {
			lead.Made += l.Pieces[k].Length.Value
		}
		if math.IsNaN(lead.Made) {
			lead.Made = 0
		}
		out.Leads = append(out.Leads, lead)
	}
	return out, nil
}
