package lumber_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

const (
	in = measure.Inch
	ft = measure.Foot
)

// checkRows fails the test unless the rows cover the deck: from edge to edge at
// the gap, every board from joint to joint, no board too long, joints on joists.
func checkRows(t *testing.T, d lumber.Deck, r *lumber.Rows) {
	t.Helper()
	across := d.Width
	if d.Slanted {
		across = (d.Length + d.Width) / math.Sqrt2
	}
	least := d.Least
	if least == 0 {
		least = r.Face / 2
	}
	n := len(r.Rows)
	last := r.Rows[n-1]
	if math.Abs(last.At+last.Width-across) > 1e-9 || r.Rows[0].At != 0 {
		t.Errorf("rows cover %g of %g", last.At+last.Width, across)
	}
	if r.Rows[0].Width != r.First || last.Width != r.Last {
		t.Errorf("edge rows %g and %g, said %g and %g", r.Rows[0].Width, last.Width, r.First, r.Last)
	}
	if n > 2 && (r.First < least-1e-5 || r.Last < least-1e-5) {
		t.Errorf("edge rows %g and %g, at least %g", r.First, r.Last, least)
	}
	if r.Gap < d.Gap-1e-6 {
		t.Errorf("gap %g under %g", r.Gap, d.Gap)
	}
	lineal, area, screws, pieces := 0.0, 0.0, 0, 0
	for k, row := range r.Rows {
		if row.Width > r.Face+1e-9 || row.Width <= 0 {
			t.Errorf("row %d is %g wide", k, row.Width)
		}
		if k > 0 && math.Abs(row.At-r.Rows[k-1].At-r.Rows[k-1].Width-r.Gap) > 1e-9 {
			t.Errorf("no gap before row %d", k)
		}
		if k > 0 && k < n-1 && row.Width != r.Face {
			t.Errorf("row %d is ripped", k)
		}
		if len(row.Boards) != len(row.Joints)+1 {
			t.Errorf("row %d: %d boards, %d joints", k, len(row.Boards), len(row.Joints))
		}
		sum := 0.0
		for i, b := range row.Boards {
			if !(b > 0) || (d.Longest > 0 && b > d.Longest+1e-5) {
				t.Errorf("row %d: a board of %g", k, b)
			}
			sum += b
			pieces++
			if i < len(row.Joints) && !d.Slanted && math.Abs(sum-d.Joists[row.Joints[i]]) > 1e-9 {
				t.Errorf("row %d: a joint beside its joist", k)
			}
		}
		if math.Abs(sum-(row.To-row.From)) > 1e-9 {
			t.Errorf("row %d: boards of %g for %g", k, sum, row.To-row.From)
		}
		if k > 0 && !linedUp(r) {
			for _, j := range row.Joints {
				if slices.Contains(r.Rows[k-1].Joints, j) {
					t.Errorf("rows %d and %d butt on the same joist", k-1, k)
				}
			}
		}
		lineal += sum
		area += sum * row.Width
		screws += 2 * len(row.Joints)
		if !d.Slanted {
			screws += 2 * len(d.Joists)
		}
	}
	if math.Abs(lineal-r.Lineal) > 1e-6 || (!d.Slanted && screws != r.Screws) || r.Screws%2 != 0 {
		t.Errorf("%g m and %d screws, said %g and %d", lineal, screws, r.Lineal, r.Screws)
	}
	// Boards and the gaps between them are at least the deck.
	if gaps := float64(n-1) * r.Gap * (d.Length + d.Width); area+gaps < d.Length*d.Width-1e-9 {
		t.Errorf("boards of %g m² for %g", area, d.Length*d.Width)
	}
	for _, w := range r.Pieces {
		pieces -= w.Count
	}
	if pieces != 0 {
		t.Errorf("pieces differ from the boards of the rows by %d", pieces)
	}
}

func linedUp(r *lumber.Rows) bool {
	return slices.ContainsFunc(r.Notes, func(s string) bool { return strings.Contains(s, "same joist") })
}

func deck(t *testing.T, length, width float64) lumber.Deck {
	t.Helper()
	joists, err := lumber.JoistLines(length, 16*in, 1.5*in)
	if err != nil {
		t.Fatal(err)
	}
	return lumber.Deck{Length: length, Width: width, Joists: joists, Board: "5/4x6", Gap: in / 8}
}

func TestRowsEdges(t *testing.T) {
	for _, c := range []struct {
		name        string
		width       float64 // in.
		rows        int
		first, last float64 // in.
		notes       int
	}{
		{"full boards", 10*5.5 + 9.0/8, 10, 5.5, 5.5, 0},
		{"last ripped", 10*5.5 + 9.0/8 + 3.125, 11, 5.5, 3, 0},
		{"last just half", 10*5.5 + 9.0/8 + 2.875, 11, 5.5, 2.75, 0},
		{"sliver, balanced", 10*5.5 + 9.0/8 + 1.125, 11, 3.25, 3.25, 1},
		{"less than a gap over", 10*5.5 + 9.0/8 + 0.09, 10, 5.5, 5.5, 1},
		{"one board", 5.5, 1, 5.5, 5.5, 0},
		{"less than one board", 3, 1, 3, 3, 0},
		{"two from one and a sliver", 6, 2, 2.9375, 2.9375, 1},
	} {
		d := deck(t, 12*ft, c.width*in)
		r, err := d.Rows()
		if err != nil {
			t.Fatal(err)
		}
		checkRows(t, d, r)
		if len(r.Rows) != c.rows || math.Abs(r.First-c.first*in) > 1e-9 || math.Abs(r.Last-c.last*in) > 1e-9 || len(r.Notes) != c.notes {
			t.Errorf("%s: %d rows, %.4f and %.4f in., %q", c.name, len(r.Rows), r.First/in, r.Last/in, r.Notes)
		}
	}
}

// Whatever the deck: it is covered. A longer board never makes more pieces, and
// slanted boards of a square deck come out the same from either corner.
func TestRowsCover(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 400 {
		d := deck(t, (4+20*rng.Float64())*ft, (1+20*rng.Float64())*ft)
		d.Slanted = rng.IntN(2) == 0
		if rng.IntN(2) == 0 {
			d.Gap = 0
		}
		if rng.IntN(3) == 0 {
			d.Least = 2 * in
		}
		if rng.IntN(2) == 0 {
			d.Longest = (6 + 10*rng.Float64()) * ft
		}
		r, err := d.Rows()
		if err != nil {
			t.Fatal(err)
		}
		checkRows(t, d, r)
		if d.Longest > 0 {
			long := d
			long.Longest = 0
			l, err := long.Rows()
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(l.Lineal-r.Lineal) > 1e-6 || l.Screws > r.Screws {
				t.Errorf("whole boards: %g m, %d screws; short ones %g m, %d", l.Lineal, l.Screws, r.Lineal, r.Screws)
			}
		}
	}
}

// A slanted deck by a different way: clip every row against the rectangle as a
// polygon, and compare the lengths.
func TestRowsSlantedByClipping(t *testing.T) {
	d := deck(t, 12*ft, 8*ft)
	d.Slanted = true
	r, err := d.Rows()
	if err != nil {
		t.Fatal(err)
	}
	for k, row := range r.Rows {
		poly := [][2]float64{{0, 0}, {d.Length, 0}, {d.Length, d.Width}, {0, d.Width}}
		clip := func(sign, c float64) { // sign*(x+y) >= c
			var out [][2]float64
			for i, p := range poly {
				q := poly[(i+1)%len(poly)]
				a, b := sign*(p[0]+p[1])-c, sign*(q[0]+q[1])-c
				if a >= 0 {
					out = append(out, p)
				}
				if a*b < 0 {
					f := a / (a - b)
					out = append(out, [2]float64{p[0] + f*(q[0]-p[0]), p[1] + f*(q[1]-p[1])})
				}
			}
			poly = out
		}
		clip(1, row.At*math.Sqrt2)
		clip(-1, -(row.At+row.Width)*math.Sqrt2)
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, p := range poly {
			v := (p[0] - p[1]) / math.Sqrt2
			lo, hi = min(lo, v), max(hi, v)
		}
		if math.Abs(lo-row.From) > 1e-9 || math.Abs(hi-row.To) > 1e-9 {
			t.Errorf("row %d from %g to %g, clipped %g to %g", k, row.From, row.To, lo, hi)
		}
	}
}

func TestRowsStagger(t *testing.T) {
	d := deck(t, 20*ft, 8*ft)
	d.Longest = 12 * ft
	r, err := d.Rows()
	if err != nil {
		t.Fatal(err)
	}
	checkRows(t, d, r)
	if linedUp(r) || len(r.Rows[0].Joints) != 1 || r.Rows[0].Joints[0] == r.Rows[1].Joints[0] {
		t.Errorf("joints %v and %v, %q", r.Rows[0].Joints, r.Rows[1].Joints, r.Notes)
	}
	// Only one joist is in reach of both ends: the joints have to line up.
	d.Joists = []float64{0.75 * in, 120 * in, 239.25 * in}
	d.Longest = 10 * ft
	if r, err = d.Rows(); err != nil {
		t.Fatal(err)
	}
	if !linedUp(r) {
		t.Error("joints that line up are not said")
	}
	d.Longest = 9 * ft
	if _, err = d.Rows(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("boards that do not reach: %v", err)
	}
}

func TestRowsRefuse(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*lumber.Deck){
		"length":          func(d *lumber.Deck) { d.Length = nan },
		"width":           func(d *lumber.Deck) { d.Width = -1 },
		"gap":             func(d *lumber.Deck) { d.Gap = math.Inf(1) },
		"face":            func(d *lumber.Deck) { d.Face = nan },
		"least":           func(d *lumber.Deck) { d.Least = 1 },
		"least NaN":       func(d *lumber.Deck) { d.Least = nan },
		"longest":         func(d *lumber.Deck) { d.Longest = -1 },
		"joists":          func(d *lumber.Deck) { d.Joists = []float64{1, 1} },
		"joist outside":   func(d *lumber.Deck) { d.Joists = []float64{0, 50} },
		"joist NaN":       func(d *lumber.Deck) { d.Joists = []float64{0, nan} },
		"board NaN width": func(d *lumber.Deck) { d.Board = "1x2"; d.Face = 0.01 },
	} {
		d := deck(t, 12*ft, 8*ft)
		change(&d)
		if _, err := d.Rows(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v, want out of range", name, err)
		}
	}
	d := deck(t, 12*ft, 8*ft)
	d.Board = "5/4"
	if _, err := d.Rows(); !errors.Is(err, measure.ErrName) {
		t.Errorf("board: %v", err)
	}
	d = deck(t, 12*ft, 8*ft)
	d.Joists = nil
	if _, err := d.Rows(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no joists: %v", err)
	}
	for _, x := range [][3]float64{{nan, 0.4, 0.04}, {4, nan, 0.04}, {4, 0.4, nan}, {4, 0.04, 0.04}, {0, 1, 1}, {1, 0.7, 0.6}} {
		if _, err := lumber.JoistLines(x[0], x[1], x[2]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("joist lines of %v: %v", x, err)
		}
	}
}

func TestJoistLines(t *testing.T) {
	got, err := lumber.JoistLines(48*in, 16*in, 1.5*in)
	if err != nil {
		t.Fatal(err)
	}
	want := []float64{0.75, 16, 32, 47.25}
	if len(got) != len(want) {
		t.Fatalf("%v", got)
	}
	for i := range want {
		if math.Abs(got[i]/in-want[i]) > 1e-9 {
			t.Errorf("line %d at %g in., want %g", i, got[i]/in, want[i])
		}
	}
}
