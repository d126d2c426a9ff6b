package layout_test

import (
	"fmt"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
)

// swim is an invented platform of 10 by 24 ft on eighteen drums in six of thirteen
// unequal bays, as drawn for a swimming place.
func swim(t testing.TB) layout.Drawing {
	t.Helper()
	marks := []float64{0, 20.5, 44, 64.25, 87.75, 108.5, 131.75, 154.75, 178, 198.75, 222.25, 242.5, 266, 286.5}
	for i := range marks {
		marks[i] *= in
	}
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	pieces, err := layout.Rectangle{Length: 288 * in, Width: 120 * in, Across: true, Marks: marks, Joist: s, Rim: s}.Pieces()
	if err != nil {
		t.Fatal(err)
	}
	d := layout.Drawing{Pieces: pieces, Decks: []layout.Deck{{
		Name: "deck", Max: layout.Point{X: 288 * in, Y: 120 * in}, Along: true, Face: 5.5 * in, Thickness: 1.5 * in,
	}}}
	for _, bay := range []int{1, 3, 5, 9, 11, 13} {
		for k, y := range []float64{21.625, 60, 98.375} {
			d.Drums = append(d.Drums, layout.Drum{
				Name: fmt.Sprintf("drum %d in bay %d", k+1, bay), At: layout.Point{X: (marks[bay-1] + marks[bay] + 1.5*in) / 2, Y: y * in},
				Diameter: 23.24 * in, Length: 36.5 * in, Bears: layout.Wedged, Tied: true,
			})
		}
	}
	return d
}

// A row of drums may wander as one, by what the rims leave it beyond the room of each.
func TestSwim(t *testing.T) {
	l := lay(t, swim(t))
	if len(l.Nodes) != 28+18*4 {
		t.Errorf("%d nodes", len(l.Nodes))
	}
	rows := 0
	for _, c := range l.Conflicts {
		switch c.Kind {
		case layout.Slides:
			rows++
			about(t, "way of the row", c.Missing, (120-3-3*36.5-3*2)*in, 1e-9)
		case layout.Protrudes: // the outermost, by half an inch
			about(t, "out past the deck", c.Missing, 0.62*in, 1e-9)
		default:
			t.Error(c)
		}
	}
	if rows != 18 {
		t.Errorf("%d drums slide", rows)
	}
	if got := motions(t, l); got != 3 {
		t.Errorf("%d motions", got)
	}
}

func BenchmarkNew(b *testing.B) {
	d := swim(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := layout.New(d); err != nil {
			b.Fatal(err)
		}
	}
}

// What [layout.New] starts from alone: which pieces and drums overlap in plan, each
// tried against each.
func BenchmarkNewByPairs(b *testing.B) {
	d := swim(b)
	type box struct{ x0, x1, y0, y1 float64 }
	var boxes []box
	for _, p := range d.Pieces {
		h := p.Width * float64(max(1, p.Plies)) / 2
		boxes = append(boxes, box{min(p.From.X, p.To.X) - h, max(p.From.X, p.To.X) + h, min(p.From.Y, p.To.Y) - h, max(p.From.Y, p.To.Y) + h})
	}
	for _, u := range d.Drums {
		boxes = append(boxes, box{u.At.X - u.Diameter/2, u.At.X + u.Diameter/2, u.At.Y - u.Length/2, u.At.Y + u.Length/2})
	}
	b.ReportAllocs()
	met := 0
	for b.Loop() {
		met = 0
		for i, p := range boxes {
			for _, q := range boxes[:i] {
				if p.x0 < q.x1 && q.x0 < p.x1 && p.y0 < q.y1 && q.y0 < p.y1 {
					met++
				}
			}
		}
	}
	if met == 0 {
		b.Error("nothing meets")
	}
}

func BenchmarkLift(b *testing.B) {
	l := lay(b, bays(b))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := l.Lift(0, 1000, layout.Strength{Moment: 1e5, Screw: 230 * 0.725, Screws: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLevel(b *testing.B) {
	var s []layout.Support
	for i := range 24 {
		s = append(s, layout.Support{At: layout.Point{X: float64(i % 6), Y: float64(i / 6)}, Height: float64(i*i%7) * 1e-3})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := layout.Level(s, layout.Point{X: 2.5, Y: 1.5}); err != nil {
			b.Fatal(err)
		}
	}
}

// The plane of least squares through the same tops, by gonum's QR.
func BenchmarkLevelByQR(b *testing.B) {
	a, h := mat.NewDense(24, 3, nil), mat.NewVecDense(24, nil)
	for i := range 24 {
		a.SetRow(i, []float64{1, float64(i % 6), float64(i / 6)})
		h.SetVec(i, float64(i*i%7)*1e-3)
	}
	b.ReportAllocs()
	for b.Loop() {
		var qr mat.QR
		var plane mat.VecDense
		qr.Factorize(a)
		if err := qr.SolveVecTo(&plane, false, h); err != nil {
			b.Fatal(err)
		}
	}
}
