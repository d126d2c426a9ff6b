package rack

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A Board of the deck lies on the members and is held by screws alone.
type Board struct {
	From, To [2]float64 // m, ends of its middle line
	EA       float64    // N, stretching
	EI       float64    // N·m², bending in the plane: thickness × width³ / 12 times E
	Screws   []Screw
	Name     string // for errors and printing; may be empty
}

// A Screw joins a board to a member.
type Screw struct {
	Member int        // by index
	At     [2]float64 // m, x and y
	Slip   float64    // N/m, what resists slip in any direction; 0 and NaN: not known
}

// Lay returns the board with two screws at each member that its middle line
// crosses: on the member's middle line, spread m apart across the board (0: one
// screw in the middle), of a
// slip stiffness in N/m (0 and NaN: not known). Members to screw to may be named;
// none means all that it crosses. A member it does not cross, or along which it
// lies within six degrees, or crosses right on a joint at its end that gives, is
// an error if it was named and left out if not. Places are plane geometry.
func (f *Frame) Lay(b Board, spread, slip float64, members ...int) (Board, error) {
	name := called(b.Name, "board", len(f.Boards))
	if err := first(f.check(), b.check(name)); err != nil {
		return Board{}, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: 2 * reach.Hi, Source: bounds}).Check("spread", spread); err != nil {
		return Board{}, err
	}
	if !blank(slip) {
		if err := stiffnesses.Check("slip", slip); err != nil {
			return Board{}, err
		}
	}
	named := len(members) > 0
	if !named {
		for i := range f.Members {
			members = append(members, i)
		}
	}
	b.Screws = slices.Clone(b.Screws)
	_, cos, sin, length := b.line()
	for k, i := range members {
		if err := index(fmt.Sprintf("members[%d]", k), i, len(f.Members)); err != nil {
			return Board{}, err
		}
		start, c, s, l := f.line(&f.Members[i])
		turn := float64(cos*s) - float64(sin*c) // sine of the angle between them
		x, left := along(b.From, cos, sin, start)
		at := -left / turn                  // along the member
		over := x - left*(c*cos+s*sin)/turn // along the board
		switch {
		case math.Abs(turn) < 0.1,
			!(at >= -slack*l && at <= l*(1+slack) && over >= -slack*length && over <= length*(1+slack)),
			at <= near*l && !f.Members[i].Ends[0].rigid(),
			at >= l*(1-near) && !f.Members[i].Ends[1].rigid():
			if named {
				return Board{}, wrong(fmt.Sprintf("members[%d]", k), f.member(i)+", not crossed by "+name, "a member under the board")
			}
			continue
		}
		sides := []float64{-1, 1}
		if spread == 0 { // one screw in the middle
			sides = []float64{0}
		}
		for _, side := range sides {
			d := at + side*spread/2/math.Abs(turn)
			b.Screws = append(b.Screws, Screw{Member: i, At: [2]float64{start[0] + float64(d*c), start[1] + float64(d*s)}, Slip: slip})
		}
	}
	return b, nil
}

// line returns a board's direction and length.
func (b *Board) line() (start [2]float64, cos, sin, length float64) {
	dx, dy := b.To[0]-b.From[0], b.To[1]-b.From[1]
	length = math.Hypot(dx, dy)
	return b.From, dx / length, dy / length, length
}

func (b *Board) check(name string) error {
	if err := first(
		places.Check(name+".From[0]", b.From[0]), places.Check(name+".From[1]", b.From[1]),
		places.Check(name+".To[0]", b.To[0]), places.Check(name+".To[1]", b.To[1]),
		stretch.Check(name+".EA", b.EA), bending.Check(name+".EI (N·m²)", b.EI),
	); err != nil {
		return err
	}
	_, _, _, length := b.line()
	return lengths.Check(name+" from end to end", length)
}

// A crossing is where a board is screwed to a member, by one screw or more.
type crossing struct {
	board, member int
	screws        []int   // of the board
	x, at         float64 // along the board, along the member
}

// crossings returns where board i is screwed to members, in order along it.
func (f *Frame) crossings(i int) ([]crossing, error) {
	b, name := &f.Boards[i], f.board(i)
	if err := b.check(name); err != nil {
		return nil, err
	}
	var out []crossing
	start, cos, sin, length := b.line()
	for k := range b.Screws {
		s := &b.Screws[k]
		field := func() string { return fmt.Sprintf("%s.Screws[%d]", name, k) }
		if s.Member < 0 || s.Member >= len(f.Members) {
			return nil, index(field()+".Member", s.Member, len(f.Members))
		}
		if err := first(has(places, s.At[0], field, ".At[0]"), has(places, s.At[1], field, ".At[1]")); err != nil {
			return nil, err
		}
		if !blank(s.Slip) {
			if err := has(stiffnesses, s.Slip, field, ".Slip"); err != nil {
				return nil, err
			}
		}
		x, left := along(start, cos, sin, s.At)
		from, c, d, l := f.line(&f.Members[s.Member])
		at, beside := along(from, c, d, s.At)
		beyond := measure.Range{Kind: measure.Length, Lo: -reach.Hi, Hi: length + reach.Hi}
		if err := first(has(reach, math.Abs(left), field, ", off the board's middle line"), has(beyond, x, field, ", along the board")); err != nil {
			return nil, err
		}
		under := func() string { return field() + ", of " + f.member(s.Member) }
		beyond.Hi = l + reach.Hi
		if err := first(has(reach, math.Abs(beside), under, ", off its middle line"), has(beyond, at, under, ", along it")); err != nil {
			return nil, err
		}
		j := slices.IndexFunc(out, func(c crossing) bool { return c.member == s.Member })
		if j < 0 {
			out = append(out, crossing{board: i, member: s.Member})
			j = len(out) - 1
		}
		out[j].screws = append(out[j].screws, k)
		out[j].x += x
		out[j].at += at
	}
	for j := range out {
		c := &out[j]
		n := float64(len(c.screws))
		c.x, c.at = c.x/n, c.at/n
	}
	slices.SortStableFunc(out, func(a, b crossing) int {
		switch {
		case a.x < b.x:
			return -1
		case a.x > b.x:
			return 1
		}
		return 0
	})
	return out, nil
}
