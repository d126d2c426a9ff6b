package dock

import (
	"errors"
	"math"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// wood is a size of lumber with its design values.
type wood struct {
	given   *plan.Wood
	section lumber.Section // on edge: depth is the larger side
	grade   lumber.Grade
	valued  bool // the grade is there
}

// yard are the species a North American yard sells as dimension lumber: what an
// unreadable stamp is taken from.
var yard = []string{"Southern Pine", "Douglas Fir-Larch", "Hem-Fir", "Spruce-Pine-Fir"}

// wood looks up what a plan says of a piece and records names it does not find.
func (d *Dock) wood(g *plan.Wood) wood {
	w := wood{given: g, section: lumber.Section{Width: math.NaN(), Depth: math.NaN()}}
	if g.Size.Value == "" {
		return w
	}
	s, err := size(g.Size.Value)
	if err != nil {
		d.errors = append(d.errors, plan.Wrong(d.plan.File, g.Size, err))
		return w
	}
	w.section = s
	if g.Species.Value == "" {
		w.grade, err = lumber.Weakest(g.Grade.Value, s, yard...)
	} else {
		w.grade, err = lumber.Lookup(g.Species.Value, g.Grade.Value, s)
	}
	if err != nil {
		at := g.Species
		var e *measure.Error
		if errors.As(err, &e) && e.Field == "grade" || at.Value == "" {
			at = g.Grade
		}
		d.errors = append(d.errors, plan.Wrong(d.plan.File, at, err))
		return w
	}
	w.valued = true
	return w
}

// size reads a nominal size or two dressed sides and puts it on edge.
func size(text string) (lumber.Section, error) {
	s, err := lumber.Size(text)
	if err != nil {
		a, b, two := strings.Cut(text, "x")
		width, err1 := measure.Length.Parse(a)
		depth, err2 := measure.Length.Parse(b)
		if !two || err1 != nil || err2 != nil {
			return s, err
		}
		s = lumber.Section{Width: width, Depth: depth}
		sides := measure.Range{Kind: measure.Length, Lo: 0.01, Hi: 0.5}
		for _, side := range []float64{width, depth} {
			if err := sides.Check("side of a dressed size", side); err != nil {
				return s, err
			}
		}
	}
	return lumber.Section{Width: min(s.Width, s.Depth), Depth: max(s.Width, s.Depth)}, nil
}

// smooth reports whether the plan says that the faces show no slits.
func (w wood) smooth() bool { return w.given.Incised.Value == "no" }

// mass returns the mass of a piece of this wood, kg: by scale where it was
// weighed, else by the heavy specific gravity at a moisture, a share of the dry
// weight. Where the plan does not say enough it is NaN; the rests of the piece
// say what is missing.
func (w wood) mass(length, moisture float64) (float64, error) {
	if plan.Has(w.given.Weighed) {
		return w.given.Weighed.Value, nil
	}
	if !w.valued || math.IsNaN(length) || math.IsNaN(moisture) {
		return math.NaN(), nil
	}
	g := w.grade.G
	if w.grade.Heavy.Printed > 0 {
		g = w.grade.Heavy
	}
	rho, err := lumber.Density(g.SI(), moisture)
	if err != nil {
		return math.NaN(), err
	}
	return rho * w.section.Area() * length, nil
}
