package sheet

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// What a block takes on paper, by hand from the sizes of type: 12 point is 4.233 mm, a
// line of it 1.3 times as high; a sign's 30 point are 10.583 mm, a line 1.2 times.
func TestHeightsByHand(t *testing.T) {
	const body, sign = 12 * 25.4 / 72 * 1.3, 30 * 25.4 / 72 * 1.2
	alike := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g mm high, by hand %g mm", what, got, want)
		}
	}
	alike("a sign of one line", Sign("AT MOST 6").height(), sign+4)
	long := Sign(strings.TrimSpace(strings.Repeat("AT MOST 6 ", 5)))
	alike("a sign of two or three", math.Remainder(long.height()-4, sign), 0)
	if n := (long.height() - 4) / sign; n < 1.5 || n > 3.5 {
		t.Errorf("it has %g lines", n)
	}
	// A head of one line and four of padding and rules, and rows of one line.
	one := Table{Head: []string{"what", "how long"}, Rows: []Row{{Cells: []string{"joist", "9 ft"}}, {Cells: []string{"rim", "24 ft"}}}}
	alike("a table", one.height(), 3*(body+cellHigh)+4+2)
	named := one
	named.Caption = "Pieces"
	alike("with a caption", named.height()-one.height(), body+2)
	tall := one
	tall.Head = []string{"what", strings.TrimSpace(strings.Repeat("how long it is ", 30))}
	if lines := (tall.height() - one.height()) / body; lines < 1.5 || math.Abs(lines-math.Round(lines)) > 1e-9 {
		t.Errorf("a long head makes it %g lines higher", lines)
	}
	noted := one
	noted.Notes = []Note{{Code: "a", Text: "measured"}, {Code: "b", Text: "never used"}}
	noted.Rows = []Row{{Cells: []string{"joist", "9 ft"}, Notes: []string{"a"}}, one.Rows[1]}
	alike("with a note", noted.height()-one.height(), footLine*1.1+0.5+underNotes)
}

// What a side leaves for its blocks, by hand: 252 mm of paper less the dock's name and the
// card's title, one line each, the two lines of the foot at least, and what stands between.
func TestRoomByHand(t *testing.T) {
	const point = 25.4 / 72
	d := Document{Title: "Otter Point", Date: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)}
	foot := 9.5 * point * 1.25 * 2
	for title, lines := range map[string]float64{"Cut list": 1, "Cut list for the first of the winters in which boards are bought": 2} {
		if got, want := d.room(&Card{Title: title}), 252-(12*point*1.3+18*point*1.2*lines+5)-foot-4; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %g mm, by hand %g mm", title, got, want)
		}
	}
}

// A block that fits to the hair stays whole; a hair less splits it.
func TestFitsToTheHair(t *testing.T) {
	row := func(note string) Row { return Row{Cells: []string{"joist", "9 ft"}, Notes: []string{note}} }
	table := Table{
		Head: []string{"what", "how long"}, Caption: "Pieces", Notes: []Note{{"a", "measured"}, {"b", "weighed"}},
		Rows: []Row{row("a"), row("b"), row("a")},
	}
	list := List{Ordered: true, Items: []string{"one", "two", "three"}}
	for _, b := range []Block{table, list} {
		h := b.height()
		if head, rest := b.split(h+1e-9, 1000); head == nil || rest != nil {
			t.Errorf("%T: does not fit where there is room for it", b)
		}
		head, rest := b.split(h-0.01, 1000)
		if head == nil || rest == nil {
			t.Fatalf("%T: is not split", b)
		}
		if head.height() > h-0.01 {
			t.Errorf("%T: what stays is too high", b)
		}
	}
}

// A heading goes to the next side with what it heads, if that does not begin below it.
func TestHeadingLeads(t *testing.T) {
	d := Document{Title: "x", Date: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)}
	full := d.room(&Card{Name: "a", Title: "a"})
	head := Heading("rows")
	pic := Picture{Name: "p", Title: "p", SVG: "<svg/>", Width: 130, Height: 40}
	for _, c := range []struct {
		name  string
		spare float64 // beyond heading and picture on the first side
		sides []int   // blocks on each
	}{
		{"room for both", 0.01, []int{3}},
		{"room for nearly both", -0.01, []int{1, 2}},
		{"room for the heading and half a picture", -pic.height() / 2, []int{1, 2}},
		{"room for the heading alone", 0.01 - pic.height(), []int{1, 2}},
		{"room for none", -pic.height() - head.height(), []int{1, 2}},
	} {
		before := blankOf(full - head.height() - pic.height() - c.spare)
		d.Cards = []Card{{Name: "a", Title: "a", Blocks: []Block{before, head, pic}}}
		sides, err := d.sides()
		if err != nil {
			t.Fatal(c.name, err)
		}
		var got []int
		for _, s := range sides {
			got = append(got, len(s.blocks))
		}
		if len(got) != len(c.sides) {
			t.Errorf("%s: %v blocks on the sides, want %v", c.name, got, c.sides)
			continue
		}
		for i := range got {
			if got[i] != c.sides[i] {
				t.Errorf("%s: %v blocks on the sides, want %v", c.name, got, c.sides)
			}
		}
	}
	d.Cards = []Card{{Name: "a", Title: "a", Blocks: []Block{blankOf(full + 1)}}}
	if _, err := d.sides(); !errors.Is(err, ErrTall) {
		t.Errorf("taller than a side: %v", err)
	}
}

// blankOf is a block that takes so much of a side, and is never split.
type blankOf float64

func (b blankOf) height() float64                          { return float64(b) }
func (b blankOf) split(left, _ float64) (head, rest Block) { return whole(b, left) }
func (b blankOf) write(*html, string)                      {}

// As many as a list may have are taken, one more or fewer is not.
func TestCountIsClosed(t *testing.T) {
	for n, want := range map[int]bool{1: false, 2: true, 3: true, 5: true, 6: false} {
		var g gate
		g.count("things", n, 2, 5)
		if (g.err == nil) != want {
			t.Errorf("%d of 2 to 5: %v", n, g.err)
		}
	}
	for heel, want := range map[float64]bool{0: true, 1: true, -1.04: true, 1.04: true, 1.06: false, -1.06: false} { // 60 degrees are 1.0472
		var g gate
		g.in(angles, "heel", heel)
		if (g.err == nil) != want || g.err != nil && !errors.Is(g.err, measure.ErrRange) {
			t.Errorf("a heel of %g rad: %v", heel, g.err)
		}
	}
}

// A float seen from its end between two joists touches the boards where all of it fits
// between them.
func TestContactAside(t *testing.T) {
	s := Section{Clear: 0.8, JoistDepth: 0.2, JoistThick: 0.04, Broad: 0.5, High: 0.4, Middle: 0}
	for aside, want := range map[float64]int{0: 1, 0.1: 1, -0.1: 1, 0.14: 1, 0.16: 0, -0.16: 0, 0.3: 0} {
		s.Aside = aside
		if got := s.contacts(); len(got) != want || want == 1 && (got[0] != [2]float64{aside, 0.2}) {
			t.Errorf("%g m aside: %v", aside, got)
		}
	}
}

// Odds go to their own days, whatever the year, and there are all or none.
func TestOddsFrom(t *testing.T) {
	day := func(y, m, d int) time.Time { return time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC) }
	var days []season.DayOdds
	for at := day(2026, 9, 1); at.Before(day(2027, 9, 1)); at = at.AddDate(0, 0, 1) {
		days = append(days, season.DayOdds{Date: at, Carries: float64(at.YearDay()) / 400})
	}
	for _, year := range []int{2025, 2026} {
		got := oddsFrom(day(year, 11, 1), 212, days)
		if len(got) != 212 {
			t.Fatalf("%d odds", len(got))
		}
		for i, odds := range got {
			if want := float64(day(year, 11, 1).AddDate(0, 0, i).YearDay()) / 400; odds != want {
				t.Errorf("day %d from 1 November %d: %g, want %g", i, year, odds, want)
			}
		}
	}
	if got := oddsFrom(day(2026, 11, 1), 212, days[:200]); got != nil {
		t.Errorf("of days that have none: %v", got)
	}
}

// A drum along the dock is round from the end and long from the side.
func TestEndwise(t *testing.T) {
	s := &dock.Shape{Length: 6, Width: 2.4}
	f := dock.Lying{X: 1, Y: 0.4, Z: -0.3, Long: 0.9, Broad: 0.6, High: 0.6, Drum: true, Along: true}
	for along, want := range map[bool]Endwise{
		false: {Y: -0.8, Z: -0.3, Broad: 0.6, High: 0.6, Round: true},
		true:  {Y: -2, Z: -0.3, Broad: 0.9, High: 0.6},
	} {
		got := endwise(s, f, along)
		if math.Abs(got.Y-want.Y) > 1e-12 {
			t.Errorf("from the side %v: %+v", along, got)
		}
		got.Y = want.Y
		if got != want {
			t.Errorf("from the side %v: %+v, want %+v", along, got, want)
		}
	}
	f.Along = false
	if endwise(s, f, false).Round || !endwise(s, f, true).Round {
		t.Error("a drum across is round from the side alone")
	}
}
