package dock

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// Of two checks of a kind the worse is kept: by the
// verdict, then by the share of the limit where each has its own, else by the value.
func TestWorseOfTwo(t *testing.T) {
	rule := &measure.Source{Title: "r"}
	c := func(value, limit float64) measure.Check { return measure.Check{Value: value, Limit: limit, Rule: rule} }
	least := func(value, limit float64) measure.Check {
		out := c(value, limit)
		out.AtLeast = true
		return out
	}
	none := measure.Refuse("n", errors.New("not known"))
	for i, x := range []struct {
		a, b          measure.Check
		beyond, share bool
	}{
		{c(2, 4), c(1, 4), true, true},
		{c(1, 4), c(2, 4), false, false},
		{c(2, 4), c(2, 4), false, false},
		{c(2*(1+1e-12), 4), c(2, 4), false, false}, // rounding is no worse
		{c(3, 8), c(1, 2), false, false},           // three eighths of its limit against a half
		{c(1, 2), c(3, 8), true, true},
		{c(5, 4), c(3, 8), true, true}, // short before what holds
		{none, c(9, 1), false, true},   // short is the worse verdict, no answer the worse share
		{c(9, 1), none, true, false},
		{none, c(1, 9), true, true},
		{none, none, false, false},
		{least(1, 0.5), least(2, 0.5), true, false},
		{least(2, 0.5), least(1, 0.5), false, true},
		{c(-1, 2), c(-2, 3), true, true}, // no share of a limit: by the value
		{c(0, 2), c(-2, 3), true, true},
	} {
		if got := beyond(x.a, x.b); got != x.beyond {
			t.Errorf("case %d: beyond %v", i, got)
		}
		if x.a.AtLeast {
			continue
		}
		if got := worseRatio(x.a, x.b); got != x.share {
			t.Errorf("case %d: by the share %v", i, got)
		}
	}
}

// What a coating goes on, by hand from the swim platform's pieces, in square inches: 14
// joists of 114 in, 4 plies of rim and 21 boards of 288 in and one ripped to 4-1/2 in.
func TestCoatedByHand(t *testing.T) {
	d := demoDock(t, "swim")
	const in2 = measure.Inch * measure.Inch
	ends := 2 * (14*1.5*7.25 + 4*1.5*9.25 + 21*1.5*5.5 + 1.5*4.5)
	sides := 2 * (14*114*(1.5+7.25) + 4*288*(1.5+9.25) + 21*288*(1.5+5.5) + 288*(1.5+4.5))
	for on, want := range map[string]float64{onEnds: ends + 1.5*288, onFaces: ends + sides, onDeck: 120 * 288} {
		got, err := d.coated(on)
		if err != nil || math.Abs(got/in2-want) > 1e-6*want {
			t.Errorf("%s: %g in², by hand %g in², %v", on, got/in2, want, err)
		}
	}
	if got, err := d.coated("the moon"); !math.IsNaN(got) || !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("%g, %v", got, err)
	}
}

// Without boards in the plan nothing is cut, and it is said why.
func TestNoStock(t *testing.T) {
	d := demoDock(t, "swim")
	p := *d.plan
	p.Stock = nil
	c, err := build(&p).Cutting(context.Background())
	if err != nil || !errors.Is(c.Err, measure.ErrUnknown) || !strings.Contains(c.Err.Error(), "stock") || len(c.Wants) != 0 {
		t.Errorf("%v, %v, %d wants", err, c.Err, len(c.Wants))
	}
}

// The season of a dock is its lake's: the model takes degrees of latitude and metres of
// mean depth.
func TestSeasonIsTheLakes(t *testing.T) {
	var b strings.Builder
	b.WriteString("date,temp\n")
	for day := time.Date(2015, time.September, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2027; day = day.AddDate(0, 0, 1) {
		fmt.Fprintf(&b, "%s,%.1f\n", day.Format(time.DateOnly), 5-17*math.Cos(2*math.Pi*float64(day.YearDay()-20-day.Year()%4)/365.25))
	}
	d, err := varied(t).WithWinters("w.csv", strings.NewReader(b.String()), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.Season(context.Background())
	if err != nil || got.NoOdds != nil {
		t.Fatal(err, got.NoOdds)
	}
	m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 18 * measure.Foot}, season.Default())
	if err != nil {
		t.Fatal(err)
	}
	for _, load := range got.Loads {
		want, err := m.Odds(context.Background(), d.winters.now, d.winters.past, season.Question{Need: load.Need, Holes: got.Holes})
		if err != nil || load.First != want.First || load.Last != want.Last || !slices.Equal(load.Days, want.Days) {
			t.Errorf("%s: from %v to %v, by the model itself from %v to %v, %v", load.Load, load.First, load.Last, want.First, want.Last, err)
		}
	}
}

// An envelope prints the worst of each member, joint and float with the situation that
// makes it.
func TestEnvelopeSays(t *testing.T) {
	e, err := docks(t)["drums under"].Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	text := e.String()
	for _, w := range e.Members {
		if want := w.Name + " sags with " + measure.Moment.Format(w.Sag.Value, measure.SI) + ": " + e.Situations[w.Sag.Situation].Name; w.Sag.Value > 0 && !strings.Contains(text, want) {
			t.Errorf("it does not say %q", want)
		}
	}
	if strings.Contains(text, "sags with 0.0 N·m") {
		t.Error("it says what is nothing")
	}
}
