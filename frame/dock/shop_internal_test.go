package dock

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// wholeShop is a shop section with every field, invented.
const wholeShop = `"shop": {
    "kerf": "1/8 in", "trim": "1/8 in", "tax": "7 %", "delivery": 85, "budget": 2000,
    "items": [
      { "name": "bracket, 7 in", "need": 24, "have": 4, "lot": 10, "price": 31.5, "mass": "0.9 lb" },
      { "name": "screw, No.10 x 3 in", "need": 620, "lot": 350, "price": 36, "mass": "0.02 lb" },
      { "name": "shore line, 50 ft", "part": "other", "need": 2, "price": 44 }
    ],
    "coatings": [
      { "name": "end-cut preservative", "on": "cut ends", "can": "0.25 gal", "covers": "25 sq ft", "price": 24, "wood_moisture": "25 %" },
      { "name": "deck stain", "on": "deck", "coats": 2, "can": "1 gal", "covers": "150 sq ft", "have": "1 gal", "price": 52, "wood_moisture": "15 %", "air_at_least": "50 F", "dry_for": "24 h" }
    ],
    "carriers": 4, "sled_load": "200 lb", "sled_friction": "30 %"
  },
  "stock": [`

// shopDock is the embedded swim platform with a shop and replacements.
func shopDock(t testing.TB, swap ...string) *Dock {
	t.Helper()
	r, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	s := string(b)
	for i := 0; i < len(swap); i += 2 {
		if !strings.Contains(s, swap[i]) {
			t.Fatalf("no %q", swap[i])
		}
		s = strings.Replace(s, swap[i], swap[i+1], 1)
	}
	d, err := Read("test.json", strings.NewReader(s))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func withShop(t testing.TB, swap ...string) *Dock {
	return shopDock(t, append([]string{`"stock": [`, wholeShop, `"depth": "9 ft"`, `"depth": "9 ft", "slope": "12 %"`}, swap...)...)
}

func shop(t testing.TB, d *Dock) *Shop {
	t.Helper()
	s, err := d.Shop(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// stockChecks are those of the sheet, with what decides them.
func stockChecks(d *Dock) []measure.Check {
	in := *d
	in.trial = &trial{governing: &governing{}}
	return in.topics([]subject{{"STOCK", (*Dock).stock}})[0].Checks
}

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Max(1e-3, math.Abs(b)) }

// TestShopByHand: the swim platform's lists reckoned by hand, in the units of its
// plan.
func TestShopByHand(t *testing.T) {
	const in2, gal = measure.Inch * measure.Inch, measure.USGallon
	s := shop(t, withShop(t))
	c := &s.Cutting
	if c.Err != nil || len(c.Boards) != 40 || len(c.Uncut) != 0 || !c.Proven || c.Gap() != 0 {
		t.Fatalf("cutting: %+v", c)
	}
	if c.Cost != 4*57+22*29 || c.Bound != c.Cost {
		t.Errorf("boards cost %g, bound %g", c.Cost, c.Bound)
	}
	// Cut ends: 14 joists 2 x 1.5 x 7.25, 4 rim boards 2 x 1.5 x 9.25, 21 deck boards
	// 2 x 1.5 x 5.5, the last 4.5 in. wide, and its ripped edge of 24 ft.
	ends := (14*2*1.5*7.25 + 4*2*1.5*9.25 + 21*2*1.5*5.5 + 2*1.5*4.5 + 1.5*288) * in2
	if f := s.Finish[0]; f.Err != nil || !near(f.Area, ends) || !near(f.Volume, 2*ends/(25*144*in2)*gal/4) || f.Cans != 1 {
		t.Errorf("ends: %+v, want %g m²", f, ends)
	}
	if f := s.Finish[1]; f.Err != nil || !near(f.Area, 240*144*in2) || !near(f.Volume, 3.2*gal) || f.Cans != 3 {
		t.Errorf("deck: %+v", f)
	}
	if len(s.Finish) != 2 || !strings.Contains(strings.Join(s.Finish[1].Gate, ";"), "15.0 %") || !strings.Contains(strings.Join(s.Finish[0].Gate, ";"), "label") {
		t.Errorf("gates: %+v", s.Finish)
	}
	// Two lots of brackets, two of screws.
	goods := 866 + 2*31.5 + 2*36 + 2*44 + 24 + 3*52.0
	b := &s.Bill
	if b.Err != nil || !near(b.Goods, goods) || !near(b.Tax, math.Round(7*(goods+85))/100) || !near(b.Total, goods+85+b.Tax) || b.Currency != "USD" {
		t.Errorf("bill %+v, want goods %g", b, goods)
	}
	if r := b.Rows[3]; r.Buy != 20 || r.Lots != 2 || r.Spare != 0 || !near(r.Mass, 24*0.9*measure.Pound) {
		t.Errorf("brackets: %+v", r)
	}
	// Nine drums of 22 lb to a sled of 200 lb, up 12 %: sin 0.119145, cos 0.992877.
	for _, h := range s.Carry {
		if h.Piece == "plastic drum" {
			want := 9 * 22 * measure.PoundForce * (0.119145 + 0.3*0.992877)
			if h.Err != nil || h.Count != 18 || h.Trips != 2 || h.People != 1 || math.Abs(h.Pull-want) > 0.01 || h.Crew != 4 {
				t.Errorf("drums: %+v, want %g N", h, want)
			}
			if brake := 9 * 22 * measure.PoundForce * (0.119145 - 0.02*0.992877); math.Abs(h.Brake-brake) > 0.01 {
				t.Errorf("brake %g, want %g", h.Brake, brake)
			}
		}
	}
}

// TestNoCoatingNamed: cut ends get the treatment of common practice, 100 ft² a
// gallon, twice; nothing else is made up.
func TestNoCoatingNamed(t *testing.T) {
	s := shop(t, shopDock(t))
	if len(s.Finish) != 1 {
		t.Fatalf("%+v", s.Finish)
	}
	f := s.Finish[0]
	if f.Err != nil || f.Spread == nil || f.Spread.Status != measure.CommonPractice || !near(f.Volume, 2*f.Area/(100*144*measure.Inch*measure.Inch)*measure.USGallon) {
		t.Errorf("%+v", f)
	}
	if b := s.Bill; b.Err == nil || !math.IsNaN(b.Total) || b.Goods != 866 {
		t.Errorf("a bill without tax and delivery: %+v", b)
	}
	spread := withShop(t, `"covers": "25 sq ft", `, "")
	if f := shop(t, spread).Finish[0]; f.Err == nil || !math.IsNaN(f.Volume) {
		t.Errorf("spread not known: %+v", f)
	}
	for _, h := range s.Carry {
		// Two people carry; the rim takes three.
		if h.Pull != 0 || (h.Err != nil) != (h.Piece == "rim") {
			t.Errorf("by hand: %+v", h)
		}
	}
}

// TestStops: two stops fill each bay that floats do, from face to face.
func TestStops(t *testing.T) {
	d := shopDock(t, `"tied": "yes",`, `"tied": "yes", "stops": "9 ft",`)
	var got []string
	for _, w := range shop(t, d).Cutting.Wants {
		if strings.HasPrefix(w.Name, "stop") {
			got = append(got, fmt.Sprintf("%d %s %s", w.Count, w.Name, measure.Length.Format(w.Length, measure.US)))
		}
	}
	want := "2 stop, bay 1 1 ft 7 in;2 stop, bay 3 1 ft 6-3/4 in;2 stop, bay 5 1 ft 7-1/4 in;2 stop, bay 9 1 ft 7-1/4 in;2 stop, bay 11 1 ft 6-3/4 in;2 stop, bay 13 1 ft 7 in"
	if s := strings.Join(got, ";"); s != want {
		t.Errorf("%s, want %s", s, want)
	}
	// Fourteen boards in hand take the joists alone.
	if c := stockChecks(d)[3]; c.Verdict() != measure.Short {
		t.Errorf("%v", c)
	}
}

// TestButtedDeck: rows that no board spans butt on joists; the rims stay whole.
func TestButtedDeck(t *testing.T) {
	d := shopDock(t, `"size": "2x6", "length": "24 ft 0-3/4 in", "count": 22`, `"size": "2x6", "length": "12 ft 1 in", "count": 66`)
	c := shop(t, d).Cutting
	sum, ripped := 0.0, 0.0
	for _, w := range c.Wants {
		if strings.HasPrefix(w.Name, "deck board") {
			sum += w.Length * float64(w.Count)
			if w.Length > 12*measure.Foot+measure.Inch {
				t.Errorf("%+v is longer than a board", w)
			}
		}
		if strings.Contains(w.Name, "ripped to 4-1/2 in") {
			ripped += w.Length * float64(w.Count)
		}
	}
	if !near(sum, 22*24*measure.Foot) || !near(ripped, 24*measure.Foot) || len(c.Uncut) > 0 {
		t.Errorf("rows come to %g m, ripped %g m, uncut %v", sum, ripped, c.Uncut)
	}
	checks := stockChecks(d)
	if checks[2].Verdict() != measure.Short || checks[3].Verdict() != measure.Holds {
		t.Errorf("%v; %v", checks[2], checks[3])
	}
}

// TestStockChecks: short boards, lists and budgets are seen.
func TestStockChecks(t *testing.T) {
	for _, c := range []struct {
		name string
		swap []string
		want string // of: for sale, listed, hardware, budget
	}{
		{"as it is", nil, "holds holds holds holds"},
		{"a board too few on the list", []string{`"count": 22`, `"count": 21`}, "holds short holds holds"},
		{"a joist too few in hand", []string{`"count": 14`, `"count": 13`}, "short short holds no answer"},
		{"nothing of that size", []string{`"size": "2x10", "length": "24 ft 0-3/4 in"`, `"size": "2x12", "length": "24 ft 0-3/4 in"`}, "no answer no answer holds no answer"},
		{"rims too long", []string{`"size": "2x10", "length": "24 ft 0-3/4 in"`, `"size": "2x10", "length": "20 ft"`}, "short short holds no answer"},
		{"count not known", []string{`"count": 22`, `"count": "unknown"`}, "no answer no answer holds no answer"},
		{"price not known", []string{`"price": 29`, `"price": "unknown"`}, "holds holds holds no answer"},
		{"heavy brackets", []string{`"mass": "0.9 lb"`, `"mass": "3 lb"`}, "holds holds short holds"},
		{"mass not known", []string{`"mass": "0.9 lb"`, `"mass": "unknown"`}, "holds holds no answer holds"},
		{"small budget", []string{`"budget": 2000`, `"budget": 1400`}, "holds holds holds short"},
		{"tax not known", []string{`"tax": "7 %"`, `"tax": "unknown"`}, "holds holds holds no answer"},
		{"lots", []string{`"price": 29,`, `"price": 29, "lot": 40,`}, "holds holds holds short"},
	} {
		swap := c.swap
		var got []string
		for _, k := range stockChecks(withShop(t, swap...))[3:] {
			got = append(got, k.Verdict().String())
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
	}
}

// TestLeftoverAgrees: looking only for what is left uncut leaves as many uncut as
// the whole plan, whatever is in hand and for sale.
func TestLeftoverAgrees(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 5))
	lengths := []string{"10 ft 0-1/2 in", "9 ft", "12 ft", "20 ft", "24 ft 1 in", "16 ft"}
	for range 40 {
		var boards []string
		for _, size := range []string{"2x8", "2x10", "2x6"} {
			for range 1 + rng.IntN(3) {
				have := []string{`"have": "yes"`, `"have": "no", "price": 20`, `"have": "unknown"`}[rng.IntN(3)]
				boards = append(boards, fmt.Sprintf(`{ "size": %q, "length": %q, "count": %d, %s }`, size, lengths[rng.IntN(len(lengths))], 1+rng.IntN(20), have))
			}
		}
		d := shopDock(t, `"stock": [`, `"stock": [`+strings.Join(boards, ", ")+`], "_note": [`, `{ "size": "2x8", "length": "10 ft 0-1/2 in", "count": 14, "price": 14.5, "have": "yes" },`, `"",`,
			`{ "size": "2x10", "length": "24 ft 0-3/4 in", "count": 4, "price": 57, "have": "no" },`, `"",`, `{ "size": "2x6", "length": "24 ft 0-3/4 in", "count": 22, "price": 29, "have": "no" }`, `""`)
		count := func(c *Cutting, err error) int {
			if err != nil || c.Err != nil {
				t.Fatal(err, c)
			}
			n := 0
			for _, w := range c.Uncut {
				n += w.Count
			}
			return n
		}
		a, b := count(d.cutting(context.Background())), count(d.leftover(context.Background()))
		if a != b {
			t.Errorf("%d pieces left, %d by the short way: %v", a, b, boards)
		}
	}
}

// TestShopUnknownNeverImproves: of stock and shop, knowing less improves no check.
func TestShopUnknownNeverImproves(t *testing.T) {
	for _, swap := range [][]string{nil, {`"count": 14`, `"count": 13`, `"budget": 2000`, `"budget": 1400`, `"count": 22`, `"count": 21`}} {
		d := withShop(t, swap...)
		before, tried := stockChecks(d), 0
		for _, e := range plan.Explain() {
			if !strings.HasPrefix(e.Path, "s") && !strings.HasPrefix(e.Path, "floats") {
				continue
			}
			path := strings.ReplaceAll(e.Path, "[]", "[1]")
			q, err := d.plan.Vary(path, "unknown")
			if errors.Is(err, measure.ErrName) {
				continue // a list or an object, or one that this plan does not have
			}
			if err != nil {
				t.Errorf("%s: %v", path, err)
				continue
			}
			tried++
			v, err := Build(q)
			if err != nil {
				t.Errorf("%s: %v", path, err)
				continue
			}
			after := stockChecks(v)
			for i, c := range before {
				if c.Verdict() != measure.Holds && after[i].Verdict() == measure.Holds {
					t.Errorf("%s unknown: %v, was %v", path, after[i], c)
				}
			}
		}
		if tried < 40 {
			t.Errorf("only %d values were tried", tried)
		}
	}
}

// TestPrices: prices past what the search takes, in no cents, or of nothing.
func TestPrices(t *testing.T) {
	for _, c := range []struct {
		rim, board string
		cost       float64
		proven     bool
	}{
		{"57000", "29000", 866000, true},
		{"0", "29", 638, false}, // a free board is searched for at a cent
		{"999999.99", "12345.67", 4*999999.99 + 22*12345.67, false},
	} {
		got := shop(t, shopDock(t, `"price": 57`, `"price": `+c.rim, `"price": 29`, `"price": `+c.board)).Cutting
		if math.Abs(got.Cost-c.cost) > 0.006 || got.Proven != c.proven || got.Bound > got.Cost || got.Bound < 0 {
			t.Errorf("%s, %s: cost %g, bound %g, proven %v", c.rim, c.board, got.Cost, got.Bound, got.Proven)
		}
	}
	got := shop(t, shopDock(t, `"price": 57`, `"price": "unknown"`)).Cutting
	if !math.IsNaN(got.Cost) || !math.IsNaN(got.Bound) || !got.Proven || got.Gap() != 0 {
		t.Errorf("without a price: %+v", got)
	}
}

func TestShopEdges(t *testing.T) {
	var zero Dock
	if s, err := zero.Shop(context.Background()); err != nil || s.Cutting.Err == nil || s.Bill.Err == nil {
		t.Errorf("zero dock: %+v, %v", s, err)
	}
	if c, err := zero.Cutting(context.Background()); err != nil || c.Err == nil {
		t.Errorf("zero dock: %+v, %v", c, err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := withShop(t).Shop(ctx); err == nil {
		t.Error("a context that has ended gives lists")
	}
	d := withShop(t)
	a := shop(t, d)
	a.Cutting.Boards[0].Pieces[0].Name = "changed"
	if b := shop(t, d); b.Cutting.Boards[0].Pieces[0].Name != "joist" {
		t.Error("a caller's change shows in the next list")
	}
	for _, c := range []struct {
		carriers, sled string
		piece          string
		errs           bool
	}{
		{`"carriers": 1`, `"sled_load": "unknown"`, "rim", true},
		{`"carriers": 8`, `"sled_load": "unknown"`, "rim", false},
		{`"carriers": 8`, `"sled_load": "20 lb"`, "rim", true},
	} {
		s := shop(t, withShop(t, `"carriers": 4`, c.carriers, `"sled_load": "200 lb"`, c.sled))
		for _, h := range s.Carry {
			if h.Piece == c.piece && ((h.Err != nil) != c.errs || (h.Trips == 0) != c.errs) {
				t.Errorf("%s %s: %+v", c.carriers, c.sled, h)
			}
		}
	}
}

// TestProofWords: each way in which a cutting may be proven or not is said.
func TestProofWords(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		cut  Cutting
		want string
	}{
		{Cutting{Cost: 10, Bound: 10, Proven: true}, "costs less than 10.00 EUR"},
		{Cutting{Cost: 10, Bound: 9}, "may save 10.0 %"},
		{Cutting{Cost: nan, Bound: nan, Proven: true}, "none buys less length"},
		{Cutting{Cost: nan, Bound: nan}, "may buy less"},
	} {
		if got := proof(&c.cut, "EUR", measure.SI); !strings.Contains(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if price(nan, "") != "not known" || price(2, "") != "2.00" || !strings.Contains(currencyName(""), "does not name") {
		t.Error("money without a label")
	}
	for label, want := range map[string]string{"EUR": "2.50 EUR in all", "": "2.50 in all, in a currency that the plan does not name"} {
		if got := (&Bill{Currency: label, Total: 2.5}).total(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The name of a piece never runs into its length: "bay 1 1 ft" reads as eleven feet.
func TestSawn(t *testing.T) {
	stop := lumber.Piece{Name: "stop, bay 1", Length: 20.375 * measure.Inch}
	b := lumber.Sawn{Name: "2x8, bought 1", Pieces: []lumber.Piece{{Name: "joist", Length: 9.5 * measure.Foot}, stop, stop}, Offcuts: []lumber.Offcut{{Length: measure.Foot}}}
	if got, want := sawn(b, measure.US), "2x8, bought: joist: 9 ft 6 in; 2 of stop, bay 1: 1 ft 8-3/8 in; rest: 1 ft"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
