package season_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

func model(t testing.TB) *season.Model {
	t.Helper()
	m, err := season.New(pond, season.Default())
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestFitFindsItsLake: a fit to what another set of params made of the same weather
// comes nearer to it than the set it began with.
func TestFitFindsItsLake(t *testing.T) {
	days := years(14)
	p := season.Default()
	p.Mixing *= 0.6
	p.MeltExchange *= 1.3
	p.OldConductivity *= 1.25
	m, err := season.New(pond, p)
	if err != nil {
		t.Fatal(err)
	}
	states, err := m.Run(days)
	if err != nil {
		t.Fatal(err)
	}
	seen := season.Seen{Winters: m.Winters(states)}
	for i, s := range states {
		if i%20 == 0 && s.Ice && s.Total() > 0.1 {
			seen.Holes = append(seen.Holes, season.Hole{Date: s.Date, Clear: s.Clear, White: s.White})
		}
	}
	f, err := season.Fit(context.Background(), pond, season.Default(), days, seen)
	if err != nil {
		t.Fatal(err)
	}
	plain, err := season.Run(pond, season.Default(), days)
	if err != nil {
		t.Fatal(err)
	}
	fitted, err := season.Run(pond, f.Params, days)
	if err != nil {
		t.Fatal(err)
	}
	off := func(of []season.State) (sum float64) {
		for i, s := range of {
			sum += math.Abs(s.Total() - states[i].Total())
		}
		return sum / float64(len(of))
	}
	if a, b := off(fitted), off(plain); a > 0.5*b {
		t.Errorf("fitted, it is off by %g m a day, before by %g m", a, b)
	}
	if f.On.N < 10 || f.Out.MAE > 4 || f.Thickness.MAE > 0.05 {
		t.Errorf("%+v", f)
	}
	if got := f.Usual.Of(season.State{}); got != 0 {
		t.Errorf("open water usually has %g m", got)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := season.Fit(ctx, pond, season.Default(), days, seen); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
	if _, err := season.Fit(context.Background(), pond, season.Default(), days, season.Seen{}); err == nil {
		t.Error("a fit to nothing")
	}
}

// TestOdds: chances lie between none and all and only rise where they are of something
// that has come by then; a winter that is known is certain.
func TestOdds(t *testing.T) {
	m := model(t)
	past := years(12)
	o, err := m.Odds(context.Background(), nil, past, season.Question{Need: 0.25})
	if err != nil {
		t.Fatal(err)
	}
	last := season.DayOdds{}
	for i, d := range o.Days {
		for _, p := range []float64{d.On, d.Out, d.Carries} {
			if !(p >= 0 && p <= 1) {
				t.Fatalf("%+v", d)
			}
		}
		if i > 0 && (d.On < last.On-1e-12 || d.Out < last.Out-1e-12) {
			t.Errorf("chances fall: %+v after %+v", d, last)
		}
		last = d
	}
	if o.Winters < 10 || !o.On.P10.Before(o.On.P90) || !o.First.P50.After(o.On.P50) || !o.Last.P50.Before(o.Out.P90) {
		t.Errorf("%+v", o)
	}
	thick, err := m.Odds(context.Background(), nil, past, season.Question{Need: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	for i, d := range thick.Days {
		if d.Carries > o.Days[i].Carries+1e-9 {
			t.Errorf("thicker ice is likelier: %+v, %+v", d, o.Days[i])
		}
	}
	if text := o.String(); !strings.Contains(text, season.Caution) || strings.Contains(text, "NaN") {
		t.Errorf("%s", text)
	}
	if d, ok := o.At(time.Date(2001, 1, 15, 0, 0, 0, 0, time.UTC)); !ok || d.On < 0.9 {
		t.Errorf("mid January: %+v, %v", d, ok)
	}
	// With the winter so far known, dates narrow.
	now, err := m.Odds(context.Background(), winter(99, -15, 3, 120), past, season.Question{Need: 0.25})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := now.Out.P90.Sub(now.Out.P10), o.Out.P90.Sub(o.Out.P10); a > b+48*time.Hour {
		t.Errorf("known so far, ice-out spreads over %v, before over %v", a, b)
	}
	if _, err := m.Odds(context.Background(), nil, years(3), season.Question{Need: 0.25}); err == nil {
		t.Error("odds from three winters")
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := m.Odds(ctx, nil, past, season.Question{Need: 0.25}); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

func TestCalendar(t *testing.T) {
	m := model(t)
	p, err := m.Calendar(context.Background(), nil, years(12), season.Question{}, season.Tasks(0.2, 0.4))
	if err != nil {
		t.Fatal(err)
	}
	text := p.String()
	for _, want := range []string{season.Caution, "carry the pieces out", "stain the deck"} {
		if !strings.Contains(text, want) {
			t.Errorf("the calendar does not say %q", want)
		}
	}
	var before time.Time
	for _, s := range p.Slots[:3] { // on ice, in their order
		if s.Usual.Before(before) || !(s.Chance >= 0 && s.Chance <= 1) {
			t.Errorf("%v", s)
		}
		before = s.Usual
	}
	if !p.Slots[0].Fits() {
		t.Errorf("no room for two days of carrying: %v", p.Slots[0])
	}
	if s := p.Slots[5]; s.Usual.Month() < time.June {
		t.Errorf("wintered wood is stained on %s", s.Usual.Format(time.DateOnly))
	}
	// Ice that never comes leaves no room.
	p, err = m.Calendar(context.Background(), nil, years(12), season.Question{}, season.Tasks(2.5, 2.9)[:1])
	if err != nil {
		t.Fatal(err)
	}
	if s := p.Slots[0]; s.Chance != 0 || s.Fits() {
		t.Errorf("2.5 m of ice: %v", s)
	}
	if _, err := m.Calendar(context.Background(), nil, years(12), season.Question{}, []season.Task{{Name: "nothing"}}); err == nil {
		t.Error("a task without effort")
	}
}

func TestFromDatesIsWide(t *testing.T) {
	var dates []time.Time
	for i := range 6 {
		dates = append(dates, time.Date(2019+i, time.April, 10+3*(i%3), 0, 0, 0, 0, time.UTC))
	}
	g, err := season.FromDates(dates, 2027)
	if err != nil {
		t.Fatal(err)
	}
	if lo, hi := g.By(g.P10), g.By(g.P90); math.Abs(lo-0.1) > 0.06 || math.Abs(hi-0.9) > 0.06 {
		t.Errorf("10 and 90 per cent dates have chances %g and %g", lo, hi)
	}
	if w := g.P90.Sub(g.P10).Hours() / 24; w < 2*1.28*g.SD {
		t.Errorf("spread over %g days, the dates themselves by %g", w, g.SD)
	}
	if !strings.Contains(g.String(), season.Caution) || !math.IsNaN(season.Guess{}.By(time.Now())) {
		t.Errorf("%s", g)
	}
	if _, err := season.FromDates(dates[:4], 2027); err == nil {
		t.Error("odds from four dates")
	}
}

func TestPadBesideIce(t *testing.T) {
	days := winter(5, -16, 3, 200)
	for i := range days {
		days[i].Snowfall, days[i].Has = 2, season.HasSnowfall
	}
	ice := run(t, days)
	m, err := season.New(pond, season.Default().Pad())
	if err != nil {
		t.Fatal(err)
	}
	pad, err := m.Run(days)
	if err != nil {
		t.Fatal(err)
	}
	last := len(days) - 1
	if pad[last].Clear <= ice[last].Clear || pad[last].Snow != 0 || pad[last].White != 0 || !m.Params().Cleared {
		t.Errorf("pad %+v, beside %+v", pad[last], ice[last])
	}
	// From any day on, the run goes on as if it had not stopped.
	again, err := m.Continue(pad[150], days[151:])
	if err != nil || math.Abs(again[len(again)-1].Clear-pad[last].Clear) > 1e-12 {
		t.Errorf("continued: %+v, %v", again[len(again)-1], err)
	}
}

func TestNeedFor(t *testing.T) {
	one, err := season.NeedFor(ice.Crossing{Mass: 90, People: 1}, false)
	if err != nil || one < 0.1 || one > 0.25 {
		t.Errorf("one person: %g m, %v", one, err)
	}
	stands, err := season.NeedFor(ice.Crossing{Mass: 90, People: 1}, true)
	if err != nil || stands != 2*one {
		t.Errorf("standing: %g m, %v", stands, err)
	}
	if _, err := season.NeedFor(ice.Crossing{Mass: math.NaN()}, false); err == nil {
		t.Error("a load of no mass")
	}
}

func TestBetween(t *testing.T) {
	d := func(day int) time.Time { return time.Date(2026, 1, day, 0, 0, 0, 0, time.UTC) }
	holes := []season.Hole{{Date: d(1), Clear: 0.2}, {Date: d(11), Clear: 0.3, White: 0.1}}
	if h, ok := season.Between(holes, d(6)); !ok || math.Abs(h-0.3) > 1e-12 {
		t.Errorf("half way: %g m, %v", h, ok)
	}
	if _, ok := season.Between(holes, d(20)); ok {
		t.Error("a thickness after the last hole")
	}
}

func TestBadInputs(t *testing.T) {
	p := season.Default()
	p.Exchange = math.NaN()
	if _, err := season.New(pond, p); !errors.Is(err, measure.ErrRange) {
		t.Errorf("params: %v", err)
	}
	if _, err := season.New(season.Lake{Latitude: 95, MeanDepth: 9}, season.Default()); !errors.Is(err, measure.ErrRange) {
		t.Errorf("lake: %v", err)
	}
	days := winter(1, -10, 2, 20)
	days[7].Date = days[6].Date
	if _, err := season.Run(pond, season.Default(), days); !errors.Is(err, measure.ErrSyntax) {
		t.Errorf("a day twice: %v", err)
	}
	if _, err := model(t).Correct(winter(1, -10, 2, 20), []season.Hole{{Date: autumn.AddDate(1, 0, 0), Clear: 0.1}}); err == nil {
		t.Error("a hole of next year")
	}
	for _, text := range []string{
		"", "date\n2026-01-01\n", "date,temp\n2026-01-01,x\n", "date,temp\n2026-13-01,1\n", "date,temp\n2026-01-01,99\n",
		"date,temp\n2026-01-02,1\n2026-01-01,1\n", "date,temp\n2026-01-01,1\n2026-01-01,1\n", "date,temp,rubbish\n2026-01-01,1,2\n", "date,high,low\n2026-01-01,1,5\n",
	} {
		if _, err := season.ReadCSV("t.csv", strings.NewReader(text), season.Options{}); err == nil || !strings.HasPrefix(err.Error(), "t.csv") {
			t.Errorf("%q: %v", text, err)
		}
	}
	if d := season.HighLow(autumn, 4, -2); d.Mean != 1 || d.Has&season.HasRange == 0 {
		t.Errorf("%+v", d)
	}
}
