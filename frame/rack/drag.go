package rack

import (
	"errors"
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Drag says which parts of a frame afloat carry what its loads leave over: the
// water along the members of a frame that is towed or struck, the ice under the
// drums of one that skids. Each part carries its share in proportion; what turns
// the frame is carried in proportion to the distance from their middle as well,
// as inertia would. The zero Drag carries nothing: then the loads must balance.
type Drag struct {
	Members []float64 // a ratio, by member, for each metre of it; nil is none
	Nodes   []float64 // N, by node: the weight on each drum; nil is none
}

// A Resultant is what forces come to: one force, and a couple about a place.
type Resultant struct {
	X, Y   float64    // N
	Couple float64    // N·m, counter-clockwise
	At     [2]float64 // m
}

// String returns the resultant with its units.
func (r Resultant) String() string {
	return fmt.Sprintf("%s along x, %s along y, %s about (%s, %s)",
		print(measure.Force, r.X), print(measure.Force, r.Y), print(measure.Moment, r.Couple),
		print(measure.Length, r.At[0]), print(measure.Length, r.At[1]))
}

// print prints a number in SI.
func print(k measure.Kind, x float64) string { return k.Format(x, measure.SI) }

// tidy leaves out what is rounding beside loads of so much on a size.
func (r Resultant) tidy(total, size float64) Resultant {
	for _, c := range [3]struct {
		x    *float64
		long float64
	}{{&r.X, 1}, {&r.Y, 1}, {&r.Couple, size}} {
		if math.Abs(*c.x) <= 1e-12*total*c.long {
			*c.x = 0
		}
	}
	return r
}

// ErrImbalance is the class of every [*ImbalanceError].
var ErrImbalance = errors.New("the loads do not balance")

// An ImbalanceError says what the loads of a frame leave over that nothing
// holds: no Holds, and no Drag to carry it.
type ImbalanceError struct {
	Left    Resultant
	Largest float64 // N, the sum of the loads whatever their direction
}

// Error says what is left over.
func (e *ImbalanceError) Error() string {
	return fmt.Sprintf("rack: %s: they leave %s, of %s in all; want loads that balance, Holds, or Drag to carry the rest",
		ErrImbalance.Error(), e.Left.String(), print(measure.Force, e.Largest))
}

// Unwrap returns [ErrImbalance].
func (e *ImbalanceError) Unwrap() error { return ErrImbalance }

// rounding is the part of the loads that may be left over without a Drag: what
// the rounding of given figures comes to. It is spread over all members and
// reported.
const rounding = 1e-3

func (f *Frame) checkDrag() error {
	for _, c := range [2]struct {
		field string
		of    []float64
		want  int
	}{{"Drag.Members", f.Drag.Members, len(f.Members)}, {"Drag.Nodes", f.Drag.Nodes, len(f.Nodes)}} {
		if c.of == nil {
			continue
		}
		if len(c.of) != c.want {
			return wrong(c.field, itoa(len(c.of))+" of them", itoa(c.want)+", or none")
		}
		for i, w := range c.of {
			if err := (measure.Range{Lo: 0, Hi: 1e12, Source: bounds}).Check(fmt.Sprintf("%s[%d]", c.field, i), w); err != nil {
				return err
			}
		}
	}
	if len(f.Holds) > 0 && (f.Drag.Members != nil || f.Drag.Nodes != nil) {
		return wrong("Drag", "Drag beside Holds", "one of them: the drag of a frame that is held is a load on its members")
	}
	return nil
}

// add adds a force at a place.
func (r *Resultant) add(x, y, couple, atX, atY float64) {
	r.X += x
	r.Y += y
	r.Couple += couple + float64((atX-r.At[0])*y) - float64((atY-r.At[1])*x)
}

// loading returns what all loads come to about a place, and their sum whatever
// their direction, couples counted as forces over the frame's size.
func (m *mesh) loading(at [2]float64) (r Resultant, sum float64) {
	f, size := m.f, m.size()
	r.At = at
	for _, p := range f.Forces {
		n := f.Nodes[p.Node]
		r.add(p.X, p.Y, p.Couple, n[0], n[1])
		sum += math.Hypot(p.X, p.Y) + math.Abs(p.Couple)/size
	}
	for i := range f.Members {
		start, cos, sin, _ := f.line(&f.Members[i])
		put := func(x, along, across, couple float64) {
			r.add(float64(along*cos)-float64(across*sin), float64(along*sin)+float64(across*cos), couple,
				start[0]+float64(x*cos), start[1]+float64(x*sin))
			sum += math.Hypot(along, across) + math.Abs(couple)/size
		}
		for _, l := range f.Members[i].Loads {
			if !l.spread() {
				put(l.From, l.Along, l.Across, l.Couple)
				continue
			}
			// Of a varying load each end's half stands a third from that end.
			w := l.To - l.From
			put(l.From+w/3, l.Along*w/2, l.Across*w/2, 0)
			put(l.To-w/3, (l.Along+l.AlongRise)*w/2, (l.Across+l.AcrossRise)*w/2, 0)
		}
	}
	return r, sum
}

// float balances the loads of a frame that nothing holds, by its drag, and picks
// the points that keep its numbers in place.
func (m *mesh) float() error {
	f := m.f
	m.afloat = len(f.Holds) == 0
	if !m.afloat {
		return nil
	}
	d := f.Drag
	asked := false
	for _, list := range [2][]float64{d.Members, d.Nodes} {
		for _, w := range list {
			asked = asked || w > 0
		}
	}
	if !asked {
		d = Drag{Members: make([]float64, len(f.Members))}
		for i := range d.Members {
			d.Members[i] = 1
		}
	}
	center, sum, polar := m.middle(&d)
	load, total := m.loading(center)
	size := m.size()
	if !asked && !(math.Hypot(load.X, load.Y) <= rounding*total && math.Abs(load.Couple) <= rounding*total*size) {
		return &ImbalanceError{load, total}
	}
	m.rest = load.tidy(total, size)
	x, y, turn := -load.X/sum, -load.Y/sum, 0.0
	if polar > 1e-12*sum*size*size {
		turn = -load.Couple / polar
	} else if !(math.Abs(load.Couple) <= 1e-9*total*size) {
		return &ImbalanceError{load, total} // one place carries no couple
	}
	m.drag = make([][]Load, len(f.Members))
	for i, w := range d.Members {
		if w == 0 {
			continue
		}
		start, cos, sin, l := f.line(&f.Members[i])
		pull := func(at float64) (along, across float64) {
			px := start[0] + float64(at*cos) - center[0]
			py := start[1] + float64(at*sin) - center[1]
			fx, fy := w*(x-float64(turn*py)), w*(y+float64(turn*px))
			return float64(fx*cos) + float64(fy*sin), float64(fy*cos) - float64(fx*sin)
		}
		load := Load{To: l}
		load.Along, load.Across = pull(0)
		along, across := pull(l)
		load.AlongRise, load.AcrossRise = along-load.Along, across-load.Across
		m.drag[i] = []Load{load}
	}
	for i, w := range d.Nodes {
		n := f.Nodes[i]
		m.loads[i][0] += w * (x - float64(turn*(n[1]-center[1])))
		m.loads[i][1] += w * (y + float64(turn*(n[0]-center[0])))
	}
	m.pin()
	return nil
}

// middle returns the middle of what drags, its sum and its polar moment.
func (m *mesh) middle(d *Drag) (center [2]float64, sum, polar float64) {
	f := m.f
	each := func(do func(w, x, y, own float64)) {
		for i, w := range d.Members {
			start, cos, sin, l := f.line(&f.Members[i])
			do(w*l, start[0]+l/2*cos, start[1]+l/2*sin, l*l/12)
		}
		for i, w := range d.Nodes {
			do(w, f.Nodes[i][0], f.Nodes[i][1], 0)
		}
	}
	each(func(w, x, y, _ float64) {
		sum += w
		center[0] += w * x
		center[1] += w * y
	})
	center[0] /= sum
	center[1] /= sum
	each(func(w, x, y, own float64) {
		x -= center[0]
		y -= center[1]
		polar += w * (float64(x*x) + float64(y*y) + own)
	})
	return center, sum, polar
}

// pin picks the first node of the first member, and the node of a member that
// lies farthest from it.
func (m *mesh) pin() {
	first := m.f.Members[0].Nodes[0]
	m.pins = [2]int{first, first}
	a, far := m.f.Nodes[first], 0.0
	for i := range m.f.Members {
		for _, n := range m.f.Members[i].Nodes {
			b := m.f.Nodes[n]
			if d := math.Hypot(b[0]-a[0], b[1]-a[1]); d > far*(1+1e-9) {
				m.pins[1], far = n, d
			}
		}
	}
}

// center takes the movement of the frame as a whole out of x: the least squares
// of what its nodes move. Afloat it has none of its own.
func (m *mesh) center(x []float64) {
	n := len(m.f.Nodes)
	var cx, cy, u, v, turn, polar float64
	for i := range n {
		cx, cy = cx+m.points[i].x/float64(n), cy+m.points[i].y/float64(n)
		dx, dy := m.points[i].moved(x)
		u, v = u+dx/float64(n), v+dy/float64(n)
	}
	for i := range n {
		p := &m.points[i]
		dx, dy := p.moved(x)
		turn += float64((p.x-cx)*(dy-v)) - float64((p.y-cy)*(dx-u))
		polar += float64((p.x-cx)*(p.x-cx)) + float64((p.y-cy)*(p.y-cy))
	}
	turn /= polar
	for i := range m.points {
		p := &m.points[i]
		a, b := -u+float64(turn*(p.y-cy)), -v-float64(turn*(p.x-cx))
		x[p.first] += float64(a*p.cos) + float64(b*p.sin)
		x[p.first+1] += float64(b*p.cos) - float64(a*p.sin)
		x[p.first+2] -= turn
	}
}

// moved returns how far a point moves along x and y.
func (p *point) moved(x []float64) (dx, dy float64) {
	a, b := x[p.first], x[p.first+1]
	return float64(a*p.cos) - float64(b*p.sin), float64(a*p.sin) + float64(b*p.cos)
}
