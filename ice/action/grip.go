package action

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Grip is what the ice does to one drum that the dock holds, and to its
// brackets: plain forces in N for a frame's model, x and y level and z up.
type Grip struct {
	Up       Span // positive lifts, negative presses down
	Sideways Span // any way level, of a dock that something holds; 0 where it rides with the ice
	Squeeze  Span // Pa on the drum's skin, opposite sides alike, at most what crushes the ice

	BracketUp, BracketSideways Span // on one bracket: even shares to all on half of them

	Rests []measure.Assumption
	Notes []string
}

// steepest is the greatest published thrust, 378 kN/m, with the most that a
// wall 5 m short adds; for less no figure was read.
const steepest = 378 * kN * 1.15

var shareSource = &measure.Source{
	Title: "brackets share evenly at best; at worst half of them take all", Status: measure.OwnChoice,
}

// Grip returns the forces on a drum held by the dock under a level change in m:
// up or down as [Cover.Uplift] has it, sideways up to the greatest published
// thrust on its longer side ([Thrusts]) and no more than crushes the ice there.
// brackets is how many tie it to the dock: how they share is our choice.
func (c Cover) Grip(b Body, level float64, brackets int) (Grip, error) {
	if err := (measure.Range{Lo: 1, Hi: 1000, Source: slip}).Check("brackets of the drum", float64(brackets)); err != nil {
		return Grip{}, err
	}
	lift, err := c.Uplift(b, level)
	if err != nil {
		return Grip{}, err
	}
	f, err := c.fill()
	if err != nil {
		return Grip{}, err
	}
	up := lift.Force
	if level < 0 {
		up.Low, up.High = -up.High, -up.Low
	}
	side := math.Max(b.Length, b.Breadth)
	sideways := lesser(Span{"thermal thrust", 0, steepest * side, ceati}, []Span{{"crushing of the ice", 0, f.p.High * f.h * side, f.p.Source}})
	return Grip{
		Up: up, Sideways: sideways,
		Squeeze:   Span{"pressure of ice on the drum", 0, f.p.High, f.p.Source},
		BracketUp: share(up, brackets), BracketSideways: share(sideways, brackets),
		Rests: f.pushes(),
		Notes: append(lift.Notes,
			"thrust is of long rigid walls, narrower faces feel more per metre; no figure of a floating dock was read",
			"drums within four characteristic lengths share: together they feel no more than the dock's outline as one body"),
	}, nil
}

// share returns the part of one of n brackets: the even share to that of half.
func share(s Span, n int) Span {
	all, half := float64(n), float64(max(n/2, 1))
	return Span{
		s.Name + ", one bracket",
		math.Min(s.Low/all, s.Low/half), math.Max(s.High/all, s.High/half), shareSource,
	}
}
