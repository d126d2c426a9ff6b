package season_test

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/floewright/ice/season"
)

var autumn = time.Date(2025, time.September, 1, 0, 0, 0, 0, time.UTC)

// winter returns days of an invented winter: a cosine of the year with a
// coldest day of so many °C, and noise that belongs to the seed.
func winter(seed uint64, coldest, noise float64, n int) []season.Day {
	r := rand.New(rand.NewPCG(seed, 7))
	days := make([]season.Day, n)
	x := 0.0
	for i := range days {
		x = 0.7*x + noise*r.NormFloat64()
		base := coldest/2 + 9 + (9-coldest/2)*math.Cos(2*math.Pi*float64(i+50)/365)
		days[i] = season.Day{Date: autumn.AddDate(0, 0, i), Mean: base + x}
	}
	return days
}

// withDepth gives each day a snow depth on the ice.
func withDepth(days []season.Day, seed uint64, most float64) []season.Day {
	r := rand.New(rand.NewPCG(seed, 11))
	depth := 0.0
	for i := range days {
		depth = math.Max(0, depth+0.02*(r.Float64()-0.45))
		days[i].Depth, days[i].Has = math.Min(depth, most), days[i].Has|season.HasDepth
	}
	return days
}

func run(t testing.TB, days []season.Day) []season.State {
	t.Helper()
	s, err := season.Run(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default(), days)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// sane checks one run: no NaN, nothing negative, and no mass lost.
func sane(t testing.TB, states []season.State) {
	t.Helper()
	for _, s := range states {
		for _, x := range []float64{s.Clear, s.White, s.Slush, s.Snow, s.Rot, s.Strength, s.Effective, s.FrostDays, s.Water, s.Fell, s.Drawn, s.Gone} {
			if !(x >= 0) || math.IsInf(x, 0) {
				t.Fatalf("%s: %+v", s.Date.Format(time.DateOnly), s)
			}
		}
		if math.IsNaN(s.Freeboard) || s.Clear > 12 || s.Strength > 1 || s.Effective > s.Total()+1e-12 {
			t.Fatalf("%s: %+v", s.Date.Format(time.DateOnly), s)
		}
		if !s.Ice && s.Total()+s.Slush+s.Snow != 0 {
			t.Fatalf("%s: open water with ice on it: %+v", s.Date.Format(time.DateOnly), s)
		}
		// Mass of snow, slush (920 kg/m³) and white ice (890): the snow's mass
		// follows from the freeboard, the weight that the water carries.
		mass := (1000-917)*s.Clear + (1000-890)*s.White + (1000-920)*s.Slush - 1000*s.Freeboard
		if lost := s.Fell + s.Drawn - s.Gone - mass - 920*s.Slush - 890*s.White; math.Abs(lost) > 1e-6*(1+s.Fell+s.Drawn) {
			t.Fatalf("%s: %g kg/m² are lost: %+v", s.Date.Format(time.DateOnly), lost, s)
		}
	}
}

// cooled returns the days colder by so much, under the same snow.
func cooled(warm []season.Day, by func(i int) float64) []season.Day {
	cold := make([]season.Day, len(warm))
	copy(cold, warm)
	for i := range cold {
		cold[i].Mean = math.Min(cold[i].Mean, math.Max(-70, cold[i].Mean-math.Abs(by(i)))) // what is colder already stays
	}
	return cold
}

// colder checks that days colder by any amounts, with the same snow on the ice day
// by day, never have thinner ice. No snow floods here; see thinner for where it does.
func colder(t testing.TB, warm []season.Day, by func(i int) float64) {
	t.Helper()
	cold := cooled(warm, by)
	p := season.Default()
	p.Bridge = 200 // kg/m² more than the ice lifts
	var a, b []season.State
	for k, days := range [2][]season.Day{warm, cold} {
		s, err := season.Run(season.Lake{Latitude: 46, MeanDepth: 9}, p, days)
		if err != nil {
			return // weather that no day has
		}
		if k == 0 {
			a = s
		} else {
			b = s
		}
	}
	for i := range a {
		if a[i].Slush+a[i].White > 0 {
			return // so much snow that it floods all the same
		}
		if b[i].Total() < a[i].Total()-1e-9 {
			t.Fatalf("%s: %g m in the cold, %g m in the warmth", a[i].Date.Format(time.DateOnly), b[i].Total(), a[i].Total())
		}
	}
}

// thinner returns by how much the ice is thinner at the most where days are colder,
// with the same snow on it, whether or not that floods.
func thinner(t testing.TB, warm []season.Day, by func(i int) float64) float64 {
	t.Helper()
	most := 0.0
	a, b := run(t, warm), run(t, cooled(warm, by))
	for i := range a {
		most = math.Max(most, a[i].Total()-b[i].Total())
	}
	return most
}

// Under snow that floods, one colder day may leave the ice some centimetres thinner,
// while cold that lasts does not: in these 200 winters, as the package's page says.
func TestColderUnderFloodingSnow(t *testing.T) {
	once, lasting, white := 0.0, 0.0, 0
	for seed := range uint64(200) {
		days := withDepth(winter(seed, -6-float64(seed%17), 4, 300), seed, 0.6)
		for _, s := range run(t, days) {
			if s.White > 0.05 {
				white++
				break
			}
		}
		r := rand.New(rand.NewPCG(seed, 3))
		lasting = math.Max(lasting, thinner(t, days, func(int) float64 { return 3 * r.ExpFloat64() }))
		for _, at := range []int{90, 100, 110, 130, 160} {
			once = math.Max(once, thinner(t, days, func(i int) float64 {
				if i == at {
					return 8
				}
				return 0
			}))
		}
	}
	t.Logf("%d winters with white ice; one colder day leaves it thinner by up to %.4f m, lasting cold by %g m", white, once, lasting)
	if white < 100 {
		t.Errorf("snow floods in %d winters of 200 only", white)
	}
	if !(once > 0.001 && once < 0.03) || lasting > 1e-9 {
		t.Errorf("one colder day leaves the ice thinner by up to %.4f m, lasting cold by %g m", once, lasting)
	}
}

func TestColderIsNeverThinner(t *testing.T) {
	for seed := range uint64(60) {
		days := withDepth(winter(seed, -6-float64(seed%17), 4, 300), seed, 0.6)
		r := rand.New(rand.NewPCG(seed, 3))
		colder(t, days, func(int) float64 { return 3 * r.ExpFloat64() })
		colder(t, days, func(i int) float64 {
			if i == 100 {
				return 5
			}
			return 0
		})
	}
}

// snowier checks that more snow never makes thicker clear ice while it freezes:
// every day from the first on is below 0 °C, and no sun melts.
func snowier(t testing.TB, days []season.Day, more func(i int) float64, depth bool) {
	t.Helper()
	deep := make([]season.Day, len(days))
	copy(deep, days)
	for i := range deep {
		if depth {
			deep[i].Depth = math.Min(5, deep[i].Depth+math.Abs(more(i)))
		} else {
			deep[i].Snowfall = math.Min(500, deep[i].Snowfall+math.Abs(more(i)))
		}
	}
	a, b := run(t, days), run(t, deep)
	for i := range a {
		if b[i].Clear > a[i].Clear+1e-9 {
			t.Fatalf("%s: clear ice %g m under more snow, %g m under less", a[i].Date.Format(time.DateOnly), b[i].Clear, a[i].Clear)
		}
	}
}

// frost returns days that all freeze, from a start at the dark of the year.
func frost(seed uint64, n int) []season.Day {
	r := rand.New(rand.NewPCG(seed, 5))
	days := make([]season.Day, n)
	for i := range days {
		days[i] = season.Day{Date: time.Date(2025, 11, 20+i, 0, 0, 0, 0, time.UTC), Mean: math.Max(-60, -6-8*r.ExpFloat64())}
	}
	return days
}

func TestMoreSnowIsNeverThickerClearIce(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 9))
		snowier(t, withDepth(frost(seed, 90), seed, 0.5), func(int) float64 { return 0.05 * r.ExpFloat64() }, true)
	}
}

// In spring a cover of snow keeps the sun off the ice.
func TestSnowProtectsInSpring(t *testing.T) {
	days := winter(3, -14, 0, 300)
	bare, covered := make([]season.Day, len(days)), make([]season.Day, len(days))
	for i := range days {
		bare[i], covered[i] = days[i], days[i]
		bare[i].Has, covered[i].Has = season.HasDepth, season.HasDepth
		if i > 205 { // from late March
			covered[i].Depth = 0.3
		}
	}
	a, b := run(t, bare), run(t, covered)
	var melted [2]float64
	for k, s := range [][]season.State{a, b} {
		melted[k] = s[205].Total() - s[225].Total()
	}
	if !(melted[0] > melted[1]) {
		t.Errorf("bare ice lost %g m, ice under snow %g m", melted[0], melted[1])
	}
}

func TestMassBalance(t *testing.T) {
	for seed := range uint64(40) {
		sane(t, run(t, winter(seed, -5-float64(seed%20), 5, 330)))
		sane(t, run(t, withDepth(winter(seed, -12, 5, 330), seed, 1)))
	}
}

// A heavy fall on thin ice floods it and freezes to white ice.
func TestFloodingMakesWhiteIce(t *testing.T) {
	days := frost(1, 60)
	for i := range days {
		days[i].Mean, days[i].Has = -8, season.HasSnowfall
	}
	days[20].Snowfall = 60
	s := run(t, days)
	if !(s[20].Slush > 0.01 && s[20].White < 0.01) {
		t.Errorf("no slush on the day of the fall: %+v", s[20])
	}
	if end := s[len(s)-1]; !(end.White > 0.02 && end.Slush == 0) {
		t.Errorf("the slush did not freeze: %+v", end)
	}
	if !(s[20].Freeboard <= 0.0) {
		t.Errorf("freeboard %g m under more snow than the ice lifts", s[20].Freeboard)
	}
}

// A cleared pad has more clear ice, no white ice and no snow.
func TestPad(t *testing.T) {
	days := winter(2, -15, 3, 200)
	l := season.Lake{Latitude: 46, MeanDepth: 9}
	pad, err := season.Run(l, season.Default().Pad(), days)
	if err != nil {
		t.Fatal(err)
	}
	natural := run(t, days)
	p, n := pad[180], natural[180]
	if !(p.Clear > n.Clear && p.White == 0 && p.Snow == 0 && n.Snow > 0) {
		t.Errorf("pad %+v\nnatural %+v", p, n)
	}
	sane(t, pad)
}

// The daily model on bare ice without heat from the water is the closed law
// itself, whatever the days are cut into.
func TestBareGrowthIsTheClosedLaw(t *testing.T) {
	p := season.Default()
	p.WaterHeat = 0
	days := frost(4, 80)
	for i := range days {
		days[i].Has = season.HasDepth
	}
	s, err := season.Run(season.Lake{Latitude: 60, MeanDepth: 1}, p, days)
	if err != nil {
		t.Fatal(err)
	}
	g := season.Ashton()
	g.Exchange, g.Density = p.IceExchange, 917
	for _, d := range s {
		if !d.Ice {
			continue
		}
		want, err := g.Thickness(0, d.FrostDays)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(d.Clear-want) > 1e-12 {
			t.Fatalf("%s: %.15g m, the closed law gives %.15g m", d.Date.Format(time.DateOnly), d.Clear, want)
		}
	}
}

// Continue goes on exactly where Run stopped.
func TestContinue(t *testing.T) {
	m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default())
	if err != nil {
		t.Fatal(err)
	}
	days := winter(8, -12, 4, 300)
	whole, err := m.Run(days)
	if err != nil {
		t.Fatal(err)
	}
	// From open water on its way to freezing, from ice under slush, and in spring.
	for from := 60; from < 280; from += 3 {
		rest, err := m.Continue(whole[from], days[from+1:])
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range rest {
			if s != whole[from+1+i] {
				t.Fatalf("from day %d, %s: %+v\n%+v", from, s.Date, s, whole[from+1+i])
			}
		}
	}
	if _, err := m.Continue(whole[140], days[150:]); err == nil {
		t.Error("a gap before the first day was not seen")
	}
}

// A deeper lake freezes later.
func TestDepthDelaysFreezing(t *testing.T) {
	days := winter(5, -10, 2, 300)
	last := -1
	for _, depth := range []float64{1, 3, 8, 20} {
		s, err := season.Run(season.Lake{Latitude: 46, MeanDepth: depth}, season.Default(), days)
		if err != nil {
			t.Fatal(err)
		}
		on := 0
		for !s[on].Ice {
			on++
		}
		if on < last {
			t.Errorf("%g m deep: ice on day %d, a shallower lake on day %d", depth, on, last)
		}
		last = on
	}
}
