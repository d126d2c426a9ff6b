package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// Doubt says how far a plan may be off, each so that the truth lies within it 19
// times out of 20, the ones independent of the others. Zero fields are the cautious
// defaults, our choice; a figure better known is given as such, however small. For
// drums of one kind Volume is the share of their [Drum] Displacement that it is known
// within.
type Doubt struct {
	Mass   float64 // of frame and drums together, a share; 0 means 0.10 (wet lumber is heavy)
	Place  float64 // of the centre of the plan's weights, along, across and up, m; 0 means 0.05
	Volume float64 // of all drums together, a share; 0 means 0.02
	Each   float64 // of single drums against each other, a share of the volume; 0 means 0.01
	Aboard float64 // of the masses aboard together, a share; 0 means 0.10
}

const (
	doubtMass   = 0.10
	doubtPlace  = 0.05
	doubtVolume = 0.02
	doubtEach   = 0.01
	doubtAboard = 0.10
)

func (d Doubt) check() error {
	share := measure.Range{Kind: measure.Percent, Lo: 0, Hi: 0.5, Source: ownBound}
	for _, f := range []struct {
		field string
		x     float64
	}{{"Doubt.Mass", d.Mass}, {"Doubt.Volume", d.Volume}, {"Doubt.Each", d.Each}, {"Doubt.Aboard", d.Aboard}} {
		if err := share.Check(f.field, f.x); err != nil {
			return err
		}
	}
	return (measure.Range{Kind: measure.Length, Lo: 0, Hi: 5, Source: ownBound}).Check("Doubt.Place", d.Place)
}

// A variation is one thing that may be off.
type variation struct {
	within   float64
	measured bool // it bears on what a measured attitude says of the mass
	apply    func(p *Platform, aboard []Weight, x float64) (*Platform, []Weight)
}

// swollen is a body larger by a factor, all over alike.
type swollen struct {
	Body
	factor float64
}

func (b swollen) Volume() float64 { return b.factor * b.Body.Volume() }

func (b swollen) Wet(height float64, up r3.Vec) Wet {
	w := b.Body.Wet(height, up)
	f := b.factor
	w.Volume, w.Plane = f*w.Volume, f*w.Plane
	w.VolumeMoment, w.PlaneMoment = r3.Scale(f, w.VolumeMoment), r3.Scale(f, w.PlaneMoment)
	for i := range w.PlaneInertia {
		w.PlaneInertia[i] *= f
	}
	return w
}

// swell makes the unit's body larger by the share x.
func (u *Unit) swell(x float64) {
	switch b := u.Body.(type) {
	case Cylinder:
		b.Length *= 1 + x
		u.Body = b
	case Block:
		b.Length *= 1 + x
		u.Body = b
	default:
		u.Body = swollen{u.Body, 1 + x}
	}
}

// variations lists what may be off with a plan.
func (d Doubt) variations(p *Platform, aboard []Weight) []variation {
	or := func(x, otherwise float64) float64 {
		if x == 0 {
			return otherwise
		}
		return x
	}
	out := []variation{{within: or(d.Mass, doubtMass), apply: func(p *Platform, aboard []Weight, x float64) (*Platform, []Weight) {
		q := p.With()
		for i := range q.Weights {
			q.Weights[i].Mass *= 1 + x
		}
		for i := range q.Units {
			q.Units[i].Mass *= 1 + x
		}
		return q, aboard
	}}}
	for _, along := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		out = append(out, variation{within: or(d.Place, doubtPlace), apply: func(p *Platform, aboard []Weight, x float64) (*Platform, []Weight) {
			q := p.With()
			for i := range q.Weights {
				q.Weights[i].At = r3.Add(q.Weights[i].At, r3.Scale(x, along))
			}
			return q, aboard
		}})
	}
	out = append(out, variation{within: or(d.Volume, doubtVolume), measured: true, apply: func(p *Platform, aboard []Weight, x float64) (*Platform, []Weight) {
		q := p.With()
		for i := range q.Units {
			q.Units[i].swell(x)
		}
		return q, aboard
	}})
	for i := range p.Units {
		if p.Units[i].Flooded {
			continue
		}
		out = append(out, variation{within: or(d.Each, doubtEach), measured: true, apply: func(p *Platform, aboard []Weight, x float64) (*Platform, []Weight) {
			q := p.With()
			q.Units[i].swell(x)
			return q, aboard
		}})
	}
	if len(aboard) > 0 {
		out = append(out, variation{within: or(d.Aboard, doubtAboard), measured: true, apply: func(p *Platform, aboard []Weight, x float64) (*Platform, []Weight) {
			more := append([]Weight(nil), aboard...)
			for i := range more {
				more[i].Mass *= 1 + x
			}
			return p, more
		}})
	}
	return out
}

// columns returns, for each variation, how far what see reads of the platform at
// rest moves when that one thing is off by all that it may be.
func (d Doubt) columns(p *Platform, aboard []Weight, see func(State) []float64) ([][]float64, error) {
	const part = 0.1 // of the doubt: the step of the slopes
	var out [][]float64
	for _, v := range d.variations(p, aboard) {
		var side [2][]float64
		for k, sign := range []float64{-1, 1} {
			q, load := v.apply(p, aboard, sign*part*v.within)
			s, err := q.With(load...).Settle()
			if err != nil {
				return nil, err
			}
			side[k] = see(s)
		}
		column := make([]float64, len(side[0]))
		for i := range column {
			column[i] = (side[1][i] - side[0][i]) / (2 * part)
		}
		out = append(out, column)
	}
	return out, nil
}

// Expect returns the freeboard to be found at each of the platform's Corners on
// flat water, with the range in which it lies 19 times out of 20, if the doubts
// hold as said: the effects of all, by their slopes at the place where
// [Platform.Settle] finds the dock, as the root of their squares (Gauss).
//
// Each corner's range holds for that corner; a heavier frame lowers all of them
// together. Beyond its range a freeboard is a reason to survey the dock.
func (p *Platform) Expect(d Doubt) ([]Figure, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if err := d.check(); err != nil {
		return nil, err
	}
	if len(p.Corners) == 0 {
		return nil, errEdge
	}
	q := p.With()
	q.Wave = nil
	rest, err := q.Settle()
	if err != nil {
		return nil, err
	}
	heights := rest.Freeboards()
	columns, err := d.columns(q, nil, State.Freeboards)
	if err != nil {
		return nil, err
	}
	out := make([]Figure, len(heights))
	for i, h := range heights {
		square := 0.0
		for _, c := range columns {
			square += c[i] * c[i]
		}
		out[i] = Figure{Value: h, Within: math.Sqrt(square)}
	}
	return out, nil
}
