package lumber_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// relaxed is the cost of the wants in fractions of boards to buy, by another
// program: every pattern listed, the simplex method of gonum. Nothing in hand.
func relaxed(t *testing.T, wants []lumber.Want, stock []lumber.Stock, saw lumber.Saw) float64 {
	t.Helper()
	var prices []float64
	var patterns [][]float64
	for _, s := range stock {
		take := make([]float64, len(wants))
		var fill func(k int, room float64)
		fill = func(k int, room float64) {
			if k == len(wants) {
				if slices.Max(take) == 0 {
					return
				}
				p := slices.Clone(take)
				patterns, prices = append(patterns, p), append(prices, s.Price)
				return
			}
			for n := 0; n <= wants[k].Count && float64(n)*(wants[k].Length+saw.Kerf) <= room+1e-9; n++ {
				take[k] = float64(n)
				fill(k+1, room-float64(n)*(wants[k].Length+saw.Kerf))
			}
			take[k] = 0
		}
		fill(0, s.Length-2*saw.Trim+saw.Kerf)
	}
	// minimize prices·x with A x = need: patterns may be short of any piece, so that
	// none is cut in excess.
	a := mat.NewDense(len(wants), len(patterns), nil)
	need := make([]float64, len(wants))
	for k, w := range wants {
		need[k] = float64(w.Count)
		for j, p := range patterns {
			a.Set(k, j, p[k])
		}
	}
	z, _, err := lp.Simplex(prices, a, need, 1e-10, nil)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// The bound is the relaxation of another program, or better, and never above the
// cost.
func TestCutBoundAgainstAnotherProgram(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 1))
	for range 25 {
		wants, stock, saw := yardCut(rng, 16, 5, 3)
		c := mustCut(t, wants, stock, saw)
		z := relaxed(t, wants, stock, saw)
		if c.Total.Cost < z-1e-6 {
			t.Errorf("cost %.2f below the relaxation %.4f", c.Total.Cost, z)
		}
		if c.Total.Bound < z-0.001 {
			t.Errorf("bound %.2f below the relaxation %.4f", c.Total.Bound, z)
		}
	}
}

// More in hand never costs more, nor a cheaper yard, a thinner saw, or a want
// less; the order of the lists changes nothing.
func TestCutDirections(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 1))
	for range 60 {
		wants, stock, saw := yardCut(rng, 18, 5, 3)
		base := mustCut(t, wants, stock, saw).Total
		if !base.Proven {
			continue
		}
		least := func(what string, o lumber.Outlay) {
			t.Helper()
			if o.Proven && o.Cost > base.Cost+1e-9 {
				t.Errorf("%s: %.2f, before %.2f", what, o.Cost, base.Cost)
			}
		}
		hand := lumber.Stock{Name: "in hand", Section: "2x8", Length: (6 + 10*rng.Float64()) * ft, InHand: 1 + rng.IntN(3)}
		more := mustCut(t, wants, append([]lumber.Stock{hand}, stock...), saw).Total
		least("more in hand", more)
		hand.Defects = [][2]float64{{0.4 * hand.Length, 0.5 * hand.Length}}
		if bad := mustCut(t, wants, append([]lumber.Stock{hand}, stock...), saw).Total; bad.Proven && more.Proven && bad.Cost < more.Cost-1e-9 {
			t.Errorf("a defect made it cheaper: %.2f, before %.2f", bad.Cost, more.Cost)
		}
		cheaper := append([]lumber.Stock(nil), stock...)
		cheaper[0].Price = math.Round(cheaper[0].Price*90) / 100
		least("cheaper", mustCut(t, wants, cheaper, saw).Total)
		least("no kerf", mustCut(t, wants, stock, lumber.Saw{Trim: saw.Trim}).Total)
		less := append([]lumber.Want(nil), wants...)
		if less[0].Count--; less[0].Count > 0 {
			least("a piece less", mustCut(t, less, stock, saw).Total)
		}
		rng.Shuffle(len(wants), func(i, j int) { wants[i], wants[j] = wants[j], wants[i] })
		rng.Shuffle(len(stock), func(i, j int) { stock[i], stock[j] = stock[j], stock[i] })
		if o := mustCut(t, wants, stock, saw).Total; o.Proven && math.Abs(o.Cost-base.Cost) > 1e-9 {
			t.Errorf("in another order %.2f, before %.2f", o.Cost, base.Cost)
		}
	}
}

// Neither a metric nor an inch list loses an exact fit to rounding.
func TestCutExactFits(t *testing.T) {
	for _, c := range []struct {
		name          string
		length, board float64
		saw           lumber.Saw
		boards        int // for 6 pieces
	}{
		{"three in one", 4 * ft, 12 * ft, lumber.Saw{}, 2},
		{"a kerf too much", 4 * ft, 12 * ft, lumber.Saw{Kerf: in / 8}, 3},
		{"sixty-fourths", 23.765625 * in, 3*23.765625*in + 2*in/8, lumber.Saw{Kerf: in / 8}, 2},
		{"sixty-fourths, one short", 23.765625 * in, 3*23.765625*in + 2*in/8 - in/64, lumber.Saw{Kerf: in / 8}, 3},
		{"tenths of a millimetre", 0.1001, 0.3063, lumber.Saw{Kerf: 0.0030}, 2},
		{"tenths, one short", 0.1001, 0.3062, lumber.Saw{Kerf: 0.0030}, 3},
		{"trimmed", 1, 3.1, lumber.Saw{Trim: 0.05}, 2},
		{"trimmed, too short", 1, 3.0999, lumber.Saw{Trim: 0.05}, 3},
		{"sum of tenths", 0.1 + 0.2, 0.9, lumber.Saw{}, 2},
	} {
		wants := []lumber.Want{{Name: "a", Section: "2x8", Length: c.length, Count: 6}}
		stock := []lumber.Stock{{Section: "2x8", Length: c.board, Price: 1}}
		plan := mustCut(t, wants, stock, c.saw)
		if plan.Total.Bought != c.boards || !plan.Total.Proven || plan.Total.Gap() != 0 {
			t.Errorf("%s: %+v, want %d boards", c.name, plan.Total, c.boards)
		}
	}
}

// Pieces keep off defects; a crack takes a cut's width; sections stay apart.
func TestCutDefectsAndSections(t *testing.T) {
	wants := []lumber.Want{
		{Name: "long", Section: "2x8", Length: 2, Count: 1},
		{Name: "short", Section: "2 X 8", Length: 1.9, Count: 1},
		{Name: "other", Section: "2x10", Length: 1, Count: 2},
	}
	stock := []lumber.Stock{
		{Name: "cracked", Section: "2×8", Length: 4, InHand: 1, Defects: [][2]float64{{1.95, 1.95}}},
		{Name: "ten", Section: "2x10", Length: 2, Price: 3},
	}
	saw := lumber.Saw{Kerf: 0.004}
	c, err := lumber.Cut(context.Background(), wants, stock, saw)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Uncut) != 0 || c.Total.Cost != 6 || c.Total.InHand != 1 || len(c.Sections) != 2 {
		t.Fatalf("%+v", c)
	}
	b := c.Boards[0]
	if len(b.Pieces) != 2 || math.Abs(b.Pieces[0].At) > 1e-9 || math.Abs(b.Pieces[1].At-1.952) > 1e-9 || b.Pieces[0].Name != "short" {
		t.Errorf("%+v", b)
	}
	if len(b.Offcuts) != 2 || math.Abs(b.Offcuts[0].Length-(1.948-1.904)) > 1e-9 {
		t.Errorf("offcuts %+v", b.Offcuts)
	}
	rest := c.Offcuts(0.04)
	if len(rest) != 4 || rest[0].InHand != 1 || rest[0].Price != 0 || rest[0].Section != "2x8" {
		t.Errorf("rests %+v", rest)
	}
	if _, err := lumber.Cut(context.Background(), []lumber.Want{{Name: "block", Section: "2x8", Length: 0.04, Count: 1}}, rest, saw); err != nil {
		t.Errorf("offcuts are no stock: %v", err)
	}
}

// Where a piece is for sale nowhere and what is in hand is used up, it is named.
func TestCutUncut(t *testing.T) {
	wants := []lumber.Want{{Name: "rim", Section: "2x8", Length: 5, Count: 3}, {Name: "joist", Section: "2x8", Length: 2, Count: 2}}
	stock := []lumber.Stock{{Name: "long", Section: "2x8", Length: 5.5, InHand: 1}, {Name: "short", Section: "2x8", Length: 4.1, Price: 10}}
	c := mustCut(t, wants, stock, lumber.Saw{Kerf: 0.003})
	want := []lumber.Want{{Name: "rim", Section: "2x8", Length: 5, Count: 2}}
	if diff := cmp.Diff(want, c.Uncut); diff != "" || c.Total.Cost != 10 || !c.Total.Proven || c.Total.Bound != 10 {
		t.Errorf("%+v %s", c.Total, diff)
	}
}

func TestCutRefuse(t *testing.T) {
	nan := math.NaN()
	good := func() ([]lumber.Want, []lumber.Stock, lumber.Saw) {
		return []lumber.Want{{Name: "joist", Section: "2x8", Length: 2, Count: 2}},
			[]lumber.Stock{{Section: "2x8", Length: 4, Price: 10}, {Section: "2x8", Length: 3, InHand: 1, Defects: [][2]float64{{1, 1.1}}}},
			lumber.Saw{Kerf: 0.003}
	}
	for _, c := range []struct {
		name   string
		change func(w []lumber.Want, s []lumber.Stock, saw *lumber.Saw)
		class  error
		says   string
	}{
		{"length", func(w []lumber.Want, _ []lumber.Stock, _ *lumber.Saw) { w[0].Length = nan }, measure.ErrRange, "joist"},
		{"count", func(w []lumber.Want, _ []lumber.Stock, _ *lumber.Saw) { w[0].Count = 0 }, measure.ErrRange, "Count"},
		{"too many", func(w []lumber.Want, _ []lumber.Stock, _ *lumber.Saw) { w[0].Count = 1 << 30 }, measure.ErrRange, "Count"},
		{"too long", func(w []lumber.Want, _ []lumber.Stock, _ *lumber.Saw) { w[0].Length = 4.001 }, measure.ErrRange, "no stock holds it"},
		{"section", func(w []lumber.Want, _ []lumber.Stock, _ *lumber.Saw) { w[0].Section = "2x6" }, measure.ErrName, "2x6"},
		{"stock length", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[0].Length = math.Inf(1) }, measure.ErrRange, "stock[0]"},
		{"price", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[0].Price = nan }, measure.ErrRange, "Price"},
		{"price under a cent", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[0].Price = 0.001 }, measure.ErrRange, "cent"},
		{"in hand", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[0].InHand = -1 }, measure.ErrRange, "InHand"},
		{"nothing", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[0].Price = 0 }, measure.ErrUnknown, "in hand"},
		{"defects for sale", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[1].Price = 4 }, measure.ErrUnknown, "of its own"},
		{"defect", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[1].Defects[0][0] = nan }, measure.ErrRange, "Defects"},
		{"defect turned", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[1].Defects[0][0] = 2 }, measure.ErrRange, "Defects"},
		{"defect outside", func(_ []lumber.Want, s []lumber.Stock, _ *lumber.Saw) { s[1].Defects[0][1] = 4 }, measure.ErrRange, "Defects"},
		{"kerf", func(_ []lumber.Want, _ []lumber.Stock, s *lumber.Saw) { s.Kerf = -1 }, measure.ErrRange, "Kerf"},
		{"trim", func(_ []lumber.Want, _ []lumber.Stock, s *lumber.Saw) { s.Trim = nan }, measure.ErrRange, "Trim"},
	} {
		w, s, saw := good()
		c.change(w, s, &saw)
		plan, err := lumber.Cut(context.Background(), w, s, saw)
		if !errors.Is(err, c.class) || plan != nil {
			t.Errorf("%s: %v, want %v", c.name, err, c.class)
		} else if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %q does not say %q", c.name, err, c.says)
		}
	}
	w, s, saw := good()
	if _, err := lumber.Cut(context.Background(), nil, s, saw); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no wants: %v", err)
	}
	many := []lumber.Want{w[0], w[0]}
	many[0].Count, many[1].Count = 1500, 1500
	if _, err := lumber.Cut(context.Background(), many, s, saw); !errors.Is(err, measure.ErrRange) {
		t.Errorf("too many pieces: %v", err)
	}
	var kinds []lumber.Want
	for k := range 301 {
		kinds = append(kinds, lumber.Want{Name: "k", Section: "2x8", Length: 1 + float64(k)/1000, Count: 1})
	}
	if _, err := lumber.Cut(context.Background(), kinds, s, saw); !errors.Is(err, measure.ErrRange) {
		t.Errorf("too many kinds: %v", err)
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if _, err := lumber.Cut(stopped, w, s, saw); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

// yardCut makes a cut list as benchmarks use it: lengths to the eighth of an
// inch from 1 ft to 16 ft, boards of 8 to 20 ft at prices by the foot that differ
// by up to a tenth. Invented data.
func yardCut(rng *rand.Rand, pieces, kinds, lengths int) ([]lumber.Want, []lumber.Stock, lumber.Saw) {
	var wants []lumber.Want
	for k := range kinds {
		wants = append(wants, lumber.Want{Name: fmt.Sprint("piece ", k+1), Section: "2x8", Length: float64(96+rng.IntN(15*96)) / 8 * in, Count: 1})
	}
	for range pieces - kinds {
		wants[rng.IntN(kinds)].Count++
	}
	perFoot := 0.8 + 1.2*rng.Float64()
	var stock []lumber.Stock
	for _, feet := range []float64{20, 12, 16, 8, 10, 14}[:lengths] {
		price := math.Round(feet*perFoot*(0.9+0.2*rng.Float64())*100) / 100
		stock = append(stock, lumber.Stock{Name: fmt.Sprintf("2x8, %g ft", feet), Section: "2x8", Length: feet * ft, Price: price})
	}
	return wants, stock, lumber.Saw{Kerf: in / 8, Trim: in / 4}
}
