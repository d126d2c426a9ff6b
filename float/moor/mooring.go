package moor

import (
	"errors"
	"math"
	"slices"
	"strconv"

	"example.org/floewright/lumber/measure"
)

// ErrAdrift reports a dock for which no rest was found: nothing holds it that way,
// or rigid lines under loads of tens of tons slide too slowly to it.
var ErrAdrift = errors.New("no rest found: nothing seems to hold the dock that way")

// A Tie is one line from a fitting on the dock to the ground, with everything
// the force passes through. Places on plan are in the dock's axes as it lies
// unmoved; heights are over one datum, such as the usual water.
type Tie struct {
	Name    string
	Line    Line
	At      [2]float64 // m, the fitting on plan
	Height  float64    // m, the fitting above the water
	Foot    [2]float64 // m, the line's ground end on plan
	FootZ   float64    // m, height of the ground end over the datum: -3 on the bottom in 3 m
	Fitting Gear       // the cleat or ring on the dock
	Links   []Gear     // shackles and the like, all along the line
	Ground  Ground     // nil: unknown, no answer
}

// A Post holds a point of the dock on plan while it rises and falls: a guide
// pile, or one pin of a hinge to a neighbour (two posts make the hinge). Past its
// play it pushes back in proportion, all ways alike.
type Post struct {
	Name      string
	At        [2]float64 // m, on plan
	Stiffness float64    // N/m
	Play      float64    // m, radius
	Fitting   Gear       // the hoop or bracket on the dock; zero: unknown, no answer
	Hold      Gear       // the pile or pin itself; zero: unknown, no answer
	Ground    Ground     // what it stands in, or the neighbour's own mooring; nil: unknown, no answer
}

// Stress returns the greatest bending stress, Pa, of a round post held below
// and pushed by a force, N, at a height, m, above where it is held:
// 32 F h/(π d³), beam theory, d the diameter, m.
func (p Post) Stress(force, height, diameter float64) (float64, error) {
	if err := first(
		forceOrZero.Check("force on the post", force), lengthOrZero.Check("height of the force", height),
		measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 1e4, Source: srcSense}.Check("diameter of the post", diameter),
	); err != nil {
		return 0, err
	}
	return 32 * force * height / (math.Pi * diameter * diameter * diameter), nil
}

// A Mooring is what holds a dock. The dock moves level (surge, sway and yaw);
// the water sets its height.
type Mooring struct {
	Ties  []Tie
	Posts []Post
}

// A Position is the dock at rest under a load.
type Position struct {
	Level     float64       // m, of the water over the datum
	X, Y      float64       // m, moved
	Turn      float64       // rad, counter-clockwise seen from above
	Hangs     []Hang        // per tie
	Pushes    [][2]float64  // per post, N along x and y on the dock
	Stiffness [3][3]float64 // of the load with X, Y and Turn: N/m, N, N·m
}

// A FittingForce is what a tie or post does to the dock at one place: plain
// numbers for the frame's model, along x and y and upward, N.
type FittingForce struct {
	Name    string
	At      [2]float64
	X, Y, Z float64
}

// Forces returns what every tie, then every post, does to the dock at rest in p
// (statics of what [Mooring.Rest] found), in
// the axes of the dock as it lies, turned with it, so that they go on its frame as they
// are. They balance the load in the same axes, [Load.Turned] by -Turn.
func (m *Mooring) Forces(p Position) ([]FittingForce, error) {
	if len(p.Hangs) != len(m.Ties) || len(p.Pushes) != len(m.Posts) {
		return nil, &measure.Error{Field: "position", Text: strconv.Itoa(len(p.Hangs)) + " ties", Class: measure.ErrName, Want: "one of this mooring"}
	}
	if err := m.check(); err != nil {
		return nil, err
	}
	var out []FittingForce
	for i := range m.Ties {
		t := &m.Ties[i]
		ux, uy, _, _, _ := t.toward(p.X, p.Y, p.Turn)
		h := &p.Hangs[i]
		f := Load{X: h.Pull * ux, Y: h.Pull * uy}.Turned(-p.Turn)
		out = append(out, FittingForce{t.Name, t.At, f.X, f.Y, -h.Down})
	}
	for i, s := range m.Posts {
		f := Load{X: p.Pushes[i][0], Y: p.Pushes[i][1]}.Turned(-p.Turn)
		out = append(out, FittingForce{s.Name, s.At, f.X, f.Y, 0})
	}
	for _, f := range out {
		if !(math.Abs(f.X)+math.Abs(f.Y)+math.Abs(f.Z) <= math.MaxFloat64) {
			return nil, &measure.Error{Field: "position", Text: f.Name + " with no finite force", Class: measure.ErrRange, Want: "one that Rest found"}
		}
	}
	return out, nil
}

// Passed returns the load, by [Mooring.Rest], that the named posts, or all where none
// is named, pass on under a storm with the water at a level, m over the datum: that
// of the pins of a hinge on the neighbour, in the dock's axes and about its origin.
// With the neighbour's own load it is the storm for a survey of the neighbour's
// mooring, through which the force goes on to ground.
func (m *Mooring) Passed(level float64, storm Storm, posts ...string) Storm {
	return func(θ float64) (Load, error) {
		if storm == nil {
			return Load{}, unknown("storm", "the load from each direction")
		}
		for _, name := range posts {
			if !slices.ContainsFunc(m.Posts, func(p Post) bool { return p.Name == name }) {
				return Load{}, &measure.Error{Field: "post", Text: name, Class: measure.ErrName, Want: "a post of this mooring"}
			}
		}
		load, err := storm(θ)
		if err != nil {
			return Load{}, err
		}
		p, err := m.Rest(level, load)
		if err != nil {
			return Load{}, err
		}
		var sum Load
		for i, f := range p.Pushes {
			if s := m.Posts[i]; len(posts) == 0 || slices.Contains(posts, s.Name) {
				sum = sum.Plus(Load{-f[0], -f[1], -(s.At[0]*f[1] - s.At[1]*f[0])})
			}
		}
		return sum, nil
	}
}

// toward returns the unit direction from the moved fitting to the ground end,
// the reach, and the turned arm of the fitting.
func (t *Tie) toward(x, y, turn float64) (ux, uy, reach, ax, ay float64) {
	s, c := math.Sincos(turn)
	ax, ay = c*t.At[0]-s*t.At[1], s*t.At[0]+c*t.At[1]
	ux, uy = t.Foot[0]-x-ax, t.Foot[1]-y-ay
	reach = math.Sqrt(ux*ux + uy*uy)
	if reach > 0 {
		ux, uy = ux/reach, uy/reach
	}
	return ux, uy, reach, ax, ay
}

// check finds malformed ties and posts.
func (m *Mooring) check() error {
	for i := range m.Ties {
		t := &m.Ties[i]
		if _, err := t.Line.check(); err != nil {
			return named(t.Name, err)
		}
		if err := first(
			anyLength.Check("fitting along", t.At[0]), anyLength.Check("fitting across", t.At[1]), anyLength.Check("fitting above water", t.Height),
			anyLength.Check("ground end along", t.Foot[0]), anyLength.Check("ground end across", t.Foot[1]), anyLength.Check("height of the ground end", t.FootZ),
		); err != nil {
			return named(t.Name, err)
		}
	}
	for i := range m.Posts {
		p := &m.Posts[i]
		if err := first(
			anyLength.Check("post along", p.At[0]), anyLength.Check("post across", p.At[1]),
			positiveSpring.Check("stiffness of the post", p.Stiffness), lengthOrZero.Check("play of the post", p.Play),
		); err != nil {
			return named(p.Name, err)
		}
	}
	return nil
}

// named puts the name of a tie or post before an error's field.
func named(name string, err error) error {
	var e *measure.Error
	if name == "" || !errors.As(err, &e) {
		return err
	}
	c := *e
	c.Field = name + ": " + c.Field
	return &c
}

// A ReachError names the tie that does not reach, and the level.
type ReachError struct {
	Tie   string
	Level float64 // m over the datum
}

// Error says which line is too short at which level.
func (e *ReachError) Error() string {
	return e.Tie + ": " + ErrReach.Error() + " with the water at " + both(e.Level)
}

// Unwrap returns ErrReach.
func (e *ReachError) Unwrap() error { return ErrReach }
