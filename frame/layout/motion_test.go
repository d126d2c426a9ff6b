package layout_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/floewright/frame/layout"
)

// motions returns in how many ways a layout moves on nothing without any member
// bending or twisting: the null space of its stiffness, from the slope-deflection
// equations with the ends released that the members say. Three are those of a rigid
// body; any more are a mechanism or a hinge.
func motions(t testing.TB, l *layout.Layout) int {
	t.Helper()
	n := 3 * len(l.Nodes)
	k := mat.NewSymDense(n, nil)
	for _, m := range l.Members {
		i, j := l.Nodes[m.I].At, l.Nodes[m.J].At
		s := math.Hypot(j.X-i.X, j.Y-i.Y)
		c, d := (j.X-i.X)/s, (j.Y-i.Y)/s
		// Own freedoms: deflection and slope (dw/ds) at both ends, twist.
		b := mat.NewDense(4, 4, []float64{
			12 / (s * s), 6 / s, -12 / (s * s), 6 / s,
			6 / s, 4, -6 / s, 2,
			-12 / (s * s), -6 / s, 12 / (s * s), -6 / s,
			6 / s, 2, -6 / s, 4,
		})
		for _, e := range []struct {
			hinge bool
			at    int
		}{{m.HingeI, 1}, {m.HingeJ, 3}} {
			if !e.hinge {
				continue
			}
			if p := b.At(e.at, e.at); p > 1e-9 {
				var out mat.Dense
				out.Outer(1/p, b.ColView(e.at), b.RowView(e.at))
				b.Sub(b, &out)
			}
		}
		// slope = thx·d - thy·c (right-handed, w up); twist = thx·c + thy·d.
		own := [5][6]float64{}
		own[0][0], own[2][3] = 1, 1
		own[1][1], own[1][2], own[3][4], own[3][5] = d, -c, d, -c
		own[4][1], own[4][2], own[4][4], own[4][5] = c, d, -c, -d
		at := [6]int{3 * m.I, 3*m.I + 1, 3*m.I + 2, 3 * m.J, 3*m.J + 1, 3*m.J + 2}
		for p := range 6 {
			for q := p; q < 6; q++ {
				sum := 0.0
				for x := range 4 {
					for y := range 4 {
						sum += own[x][p] * b.At(x, y) * own[y][q]
					}
				}
				if !m.Untwist {
					sum += own[4][p] * own[4][q]
				}
				// Scaled so that short members do not drown the long ones' motions.
				k.SetSym(at[p], at[q], k.At(at[p], at[q])+sum/s)
			}
		}
	}
	var e mat.EigenSym
	if !e.Factorize(k, false) {
		t.Fatal("no eigenvalues")
	}
	free := 0
	values := e.Values(nil)
	for _, x := range values {
		if x < 1e-9*values[len(values)-1] {
			free++
		}
	}
	return free
}

func TestMotions(t *testing.T) {
	if got := motions(t, lay(t, bays(t))); got != 3 {
		t.Errorf("the plain frame has %d motions, want 3", got)
	}
	// With every end stiff nothing is released.
	d := bays(t)
	for i := range d.Pieces {
		d.Pieces[i].Stiff = true
	}
	l := lay(t, d)
	for _, m := range l.Members {
		if m.HingeI || m.HingeJ || m.Untwist {
			t.Errorf("%+v", m)
		}
	}
	if got := motions(t, l); got != 3 {
		t.Errorf("the stiff frame has %d motions, want 3", got)
	}
	// Blocking with stiff ends between joists leaves no mechanism either.
	d = bays(t)
	for k, x := range []float64{1.5, 27.5, 53.5} {
		d.Pieces = append(d.Pieces, layout.Piece{
			Name: "block " + string(rune('1'+k)), Kind: layout.Blocking, Stiff: k != 1, Width: 1.5 * in, Depth: 5.5 * in,
			From: layout.Point{X: x * in, Y: 12 * in}, To: layout.Point{X: (x + 24.5) * in, Y: 12 * in},
		})
	}
	l = lay(t, d)
	if got := motions(t, l); got != 3 {
		t.Errorf("the blocked frame has %d motions, want 3", got)
	}
	// Joists turn freely at their ends: one member of each passes no torque, and both
	// end members of those that stiff blocking twists.
	free := map[string]int{}
	for _, m := range l.Members {
		if m.Untwist {
			free[l.Drawing.Pieces[m.Piece].Name]++
		}
	}
	for name, want := range map[string]int{"joist 1": 2, "joist 2": 2, "joist 3": 2, "joist 4": 2, "block 1": 0, "block 2": 1, "block 3": 0, "rim 1": 0} {
		if free[name] != want {
			t.Errorf("%s is free to twist in %d members, want %d", name, free[name], want)
		}
	}
	free = map[string]int{}
	for _, m := range lay(t, bays(t)).Members {
		if m.Untwist {
			free[bays(t).Pieces[m.Piece].Name]++
		}
	}
	for name, want := range map[string]int{"joist 1": 1, "joist 2": 1, "joist 3": 1, "joist 4": 1, "rim 1": 0, "rim 2": 0} {
		if free[name] != want {
			t.Errorf("%s is free to twist in %d members, want %d", name, free[name], want)
		}
	}
}
