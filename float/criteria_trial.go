package float

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A loading is one load on the deck, or one drum lost.
type loading struct {
	name string
	add  []Weight
	lost int // number of the unit that is flooded; -1 is none
	end  float64
}

// A trial is one criterion being tried on one platform.
type trial struct {
	platform   *Platform
	deck       Deck
	criterion  Criterion
	selected   []Criterion
	outline    outline
	outlineErr error
	notes      []string
}

// note adds a remark to the check.
func (t *trial) note(format string, a ...any) {
	t.notes = append(t.notes, fmt.Sprintf(format, a...))
}

// settle returns the state under a load.
func (t *trial) settle(l loading) (State, error) { return t.under(l, true) }

// under is settle; whether a failure says how much is lacking is the caller's choice.
func (t *trial) under(l loading, howMuch bool) (State, error) {
	p := *t.platform
	p.Weights = append(append(make([]Weight, 0, len(p.Weights)+len(l.add)), p.Weights...), l.add...)
	if l.lost >= 0 {
		p.Units = append([]Unit(nil), p.Units...)
		p.Units[l.lost].Flooded = true
	}
	return p.settleFrom(0, 0, howMuch)
}

// loads returns the loads of the criterion: the dead load alone where it has none of
// its own.
func (t *trial) loads() ([]loading, error) {
	if c := t.criterion; c.Pressure == 0 && c.Mass == 0 && !c.lost {
		return []loading{deadLoad}, nil
	}
	loads, err := t.criterion.loads(t)
	if err == nil && len(loads) == 0 { // it is for the other kind of load
		loads = []loading{deadLoad}
	}
	return loads, err
}

var deadLoad = loading{name: "dead load", lost: -1}

// inTurn is for criteria that have no load unless one is given to a copy: the
// pressure over the deck, and the mass on spots, in turn.
func inTurn(t *trial) ([]loading, error) {
	a, err := evenly(t)
	if err != nil {
		return nil, err
	}
	b, err := onSpots(t)
	return append(a, b...), err
}

// evenly lays the pressure over the whole deck.
func evenly(t *trial) ([]loading, error) {
	if t.criterion.Pressure == 0 || t.outlineErr != nil {
		return nil, t.outlineErr
	}
	return t.even(t.criterion.Pressure), nil
}

func (t *trial) even(pressure float64) []loading {
	at := t.outline.centre
	at.Z += t.criterion.Above
	return []loading{{
		name: measure.Pressure.Format(pressure, measure.SI) + " over the deck", lost: -1,
		add: []Weight{{Mass: pressure * t.outline.area / measure.Gravity, At: at}},
	}}
}

// byHalves lays the pressure over one half of the width, then over the other.
func byHalves(t *trial) ([]loading, error) {
	if t.criterion.Pressure == 0 || t.outlineErr != nil {
		return nil, t.outlineErr
	}
	var out []loading
	for _, sign := range []float64{1, -1} {
		side := "+y"
		if sign < 0 {
			side = "-y"
		}
		area, at := t.outline.half(sign)
		at.Z += t.criterion.Above
		out = append(out, loading{
			name: measure.Pressure.Format(t.criterion.Pressure, measure.SI) + " over the half of the deck toward " + side, lost: -1,
			add: []Weight{{Mass: t.criterion.Pressure * area / measure.Gravity, At: at}},
		})
	}
	return out, nil
}

// onSpots puts the mass on places around the deck, in turn.
func onSpots(t *trial) ([]loading, error) {
	if t.criterion.Mass == 0 {
		return nil, nil
	}
	return t.spots(t.criterion.Mass)
}

func (t *trial) spots(mass float64) ([]loading, error) {
	if t.outlineErr != nil {
		return nil, t.outlineErr
	}
	places, err := t.outline.spots(t.criterion.Inset)
	if err != nil {
		return nil, err
	}
	out := make([]loading, len(places))
	for i, at := range places {
		out[i] = loading{name: spotName(mass, at), lost: -1}
		at.Z += t.criterion.Above
		out[i].add = []Weight{{Mass: mass, At: at}}
	}
	return out, nil
}

func spotName(mass float64, at r3.Vec) string {
	return fmt.Sprintf("%s at x %.2f m, y %.2f m", measure.Mass.Format(mass, measure.SI), at.X, at.Y)
}

// halvesAndSpots is both, in turn and not together.
func halvesAndSpots(t *trial) ([]loading, error) {
	a, err := byHalves(t)
	if err != nil {
		return nil, err
	}
	b, err := onSpots(t)
	return append(a, b...), err
}

// atEnds puts the mass on the middle of the deck, inset from one end and then
// from the other.
func atEnds(t *trial) ([]loading, error) {
	if t.outlineErr != nil {
		return nil, t.outlineErr
	}
	o, c := t.outline, t.criterion
	if !(2*c.Inset <= o.x1-o.x0) {
		return nil, &measure.Error{
			Field: "Inset", Kind: measure.Length, Value: c.Inset, Class: measure.ErrRange,
			Want: "at most half the deck's length",
		}
	}
	var out []loading
	for _, end := range []float64{1, -1} {
		x := o.x1 - c.Inset
		if end < 0 {
			x = o.x0 + c.Inset
		}
		at := o.middle(x)
		l := loading{name: spotName(c.Mass, at), lost: -1, end: end}
		at.Z += c.Above
		l.add = []Weight{{Mass: c.Mass, At: at}}
		out = append(out, l)
	}
	return out, nil
}

// eachLost floods each unit in turn, with the pressure over the deck.
func eachLost(t *trial) ([]loading, error) {
	var add []Weight
	under := "dead load"
	if t.criterion.Pressure > 0 {
		if t.outlineErr != nil {
			return nil, t.outlineErr
		}
		l := t.even(t.criterion.Pressure)[0]
		add, under = l.add, l.name
	}
	var out []loading
	for i := range t.platform.Units {
		if !t.platform.Units[i].Flooded {
			out = append(out, loading{name: fmt.Sprintf("unit %d lost under %s", i, under), add: add, lost: i})
		}
	}
	if len(out) == 0 {
		return nil, &measure.Error{Field: "Units", Class: measure.ErrUnknown, Why: "there is no drum to lose"}
	}
	return out, nil
}

// everySelected returns the dead load and the loads of the selected criteria, or
// the criterion's own pressure and mass where none is selected. The loss of a drum
// has limits of its own.
func everySelected(t *trial) ([]loading, error) {
	out := []loading{deadLoad}
	for _, c := range t.selected {
		if c.every {
			continue
		}
		other := *t
		other.criterion = c
		loads, err := other.loads()
		if err != nil {
			return nil, err
		}
		for _, l := range loads {
			if len(l.add) > 0 && l.lost < 0 { // a lost drum is no load
				out = append(out, l)
			}
		}
	}
	if len(t.selected) > 0 {
		return out, nil
	}
	loads, err := inTurn(t)
	return append(out, loads...), err
}

// worst settles every loading and returns the greatest of what see returns, with
// its loading; a negative sign asks for the smallest. Where the dock fails to
// float, the failure returns.
func (t *trial) worst(sign float64, see func(State, loading) (float64, error)) (float64, error) {
	loads, err := t.loads()
	if err != nil {
		return 0, err
	}
	value, name := math.Inf(-1), ""
	for _, l := range loads {
		s, err := t.settle(l)
		if fails(err) {
			t.note("under %s: %v", l.name, err)
			return 0, err
		}
		if err != nil {
			return 0, err
		}
		v, err := see(s, l)
		if err != nil {
			return 0, err
		}
		if sign*v > value {
			value, name = sign*v, l.name
		}
	}
	if len(loads) > 1 {
		t.note("worst under %s", name)
	}
	return sign * value, nil
}
