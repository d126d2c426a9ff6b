package moor_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

func almost(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.10g, want %.10g", what, got, want)
	}
}

// Wind pushes along itself with the square of its speed; off the middle it turns
// the dock; a face without a shape counts as the worst listed.
func TestWindLoad(t *testing.T) {
	face := moor.Face{Name: "shed", End: 2, Side: 5, Height: 1.5, Shape: 1.2, At: [2]float64{2, -1}}
	w := moor.Wind{Speed: 10}
	for _, θ := range []float64{0, 0.7, 2, 4, 6} {
		a, err := w.Load(θ, face)
		if err != nil {
			t.Fatal(err)
		}
		force := math.Hypot(a.X, a.Y)
		almost(t, "across the wind", -a.X*math.Sin(θ)+a.Y*math.Cos(θ), 0, 1e-9*force)
		almost(t, "turn", a.Turn, 2*a.Y+a.X, 1e-9*force)
		twice, err := moor.Wind{Speed: 20}.Load(θ, face, face)
		if err != nil {
			t.Fatal(err)
		}
		almost(t, "twice the wind on two", math.Hypot(twice.X, twice.Y), 8*force, 1e-9*force)
	}
	bare := face
	bare.Shape = 0
	a, err1 := w.Load(0, bare)
	b, err2 := w.Load(0, face)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	most := 0.0
	for _, name := range []string{"flat plate, square", "endless strip", "small boat, side", "cylinder across", "person standing"} {
		f, err := moor.Factor("shape in wind", name)
		if err != nil || f.Source == nil || f.Source.Status != measure.Memory {
			t.Errorf("%s: %+v, %v", name, f, err)
		}
		most = math.Max(most, f.Value)
	}
	almost(t, "no shape given", a.X/b.X, most/1.2, 1e-12)
	// An hourly mean is raised to the gust; the gust itself is not.
	gust, err := moor.Wind{Speed: 10, Averaging: 3}.Load(0, face)
	if err != nil || !(b.X > 2*gust.X) {
		t.Errorf("hourly mean %g N, gust %g N, %v", b.X, gust.X, err)
	}
	low := face
	low.Height = -0.2 // no weaker than at 15 ft
	if l, err := w.Load(0, low); err != nil || l.X != b.X {
		t.Errorf("%+v, %v", l, err)
	}
	if l, err := (moor.Wind{Speed: 10, Height: 10}).Load(0, low); err != nil || l.X != b.X {
		t.Errorf("the height of forecasts, said: %+v, unsaid %+v, %v", l, b, err)
	}
	high := face
	high.Height = 9
	if l, err := w.Load(0, high); err != nil || math.Abs(l.X/b.X-math.Pow(9/4.572, 2./7)) > 1e-9 {
		t.Errorf("%+v, %v", l, err)
	}
	// A wind known at deck height is taken as it is.
	there, err := moor.Wind{Speed: 10, Height: 1.5, Averaging: 3}.Load(0, face)
	if q, _ := (moor.Wind{Speed: 10}).Pressure(); err != nil || math.Abs(there.X-q*1.2*2) > 1e-9 {
		t.Errorf("%+v, %v", there, err)
	}
}

func TestWindTo(t *testing.T) {
	w := moor.Wind{Speed: 12, Height: 4, Averaging: 60}
	there, err1 := w.To(10, 7200)
	back, err2 := there.To(4, 60)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	almost(t, "there and back", back.Speed, 12, 1e-12)
	last := math.Inf(1)
	for _, s := range []float64{1, 3, 45, 600, 3599, 3600, 3601, 7200, 36000} {
		g, err := moor.Wind{Speed: 1}.To(10, s)
		if err != nil || g.Speed > last+5e-4 {
			t.Errorf("mean over %g s is %g of the hour's, over less %g; %v", s, g.Speed, last, err)
		}
		last = g.Speed
	}
}

// Over open land 10 m up the map's wind is itself; over a lake it is stronger, and
// below 15 ft no weaker than there.
func TestWindExposure(t *testing.T) {
	kz := func(exposure string, height float64) float64 {
		w, err := moor.Wind{Speed: 40, Exposure: exposure}.To(height, 3)
		if err != nil || w.Exposure != "" || w.Height != height || w.Averaging != 3 {
			t.Fatal(w, err)
		}
		return w.Speed * w.Speed / 1600
	}
	almost(t, "open land, 10 m", kz("C", 10), 1, 0.005)
	if !(kz("D", 10) > kz("C", 10)) || kz("D", 1) != kz("D", 15*measure.Foot) || !(kz("D", 5) > kz("D", 4.5)) {
		t.Errorf("lake %g and %g, land %g", kz("D", 10), kz("D", 5), kz("C", 10))
	}
	face := moor.Face{End: 2, Height: 0.5, Shape: 1}
	l, err := moor.Wind{Speed: 40, Exposure: "D"}.Load(0, face)
	q, err2 := moor.Wind{Speed: 40}.Pressure()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	almost(t, "on a dock", l.X, 2*q*kz("D", 4), 1e-9*l.X)
	hour, err := moor.Wind{Speed: 40, Exposure: "D"}.To(10, 3600)
	if err != nil {
		t.Fatal(err)
	}
	plain, err := moor.Wind{Speed: 40, Averaging: 3}.To(10, 3600)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "mean for the waves", hour.Speed/plain.Speed, math.Sqrt(kz("D", 10)), 1e-12)
	for name, w := range map[string]moor.Wind{
		"height": {Speed: 1, Exposure: "C", Height: 2}, "averaging": {Speed: 1, Exposure: "C", Averaging: 3600},
	} {
		if _, err := w.Load(0, face); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := (moor.Wind{Speed: 1, Exposure: "B"}).Pressure(); !errors.Is(err, measure.ErrName) {
		t.Errorf("a suburb: %v", err)
	}
}

// A current pushes more the less water there is under the dock.
func TestCurrent(t *testing.T) {
	face := moor.Face{Side: 2, End: 1}
	last := 0.0
	for _, draft := range []float64{0, 0.3, 0.6, 1} {
		l, err := moor.Current{Speed: 0.4, Depth: 1, Draft: draft}.Load(math.Pi/2, face)
		if err != nil || !(l.Y > last) || math.Abs(l.X) > 1e-9 {
			t.Errorf("draft %g: %+v after %g, %v", draft, l, last, err)
		}
		last = l.Y
	}
	almost(t, "reaching the bottom", last, 500*0.16*2*3.2, 1e-9)
	deep, err := moor.Current{Speed: 0.4}.Load(math.Pi/2, face)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "deep, no shape given", deep.Y, 500*0.16*2*1.2, 1e-9)
	// ½·1000·0.5²·10 m² · 0.075/(log₁₀(0.5·6/1.307e-6) - 2)², by hand: log₁₀ R 6.36085.
	drag, err := moor.Current{Speed: 0.5}.Friction(10, 6)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "skin", drag, 1250*0.075/(4.36085*4.36085), 1e-4)
	if f, err := (moor.Current{}).Friction(10, 6); f != 0 || err != nil {
		t.Errorf("still water drags %g N, %v", f, err)
	}
}

func TestShielding(t *testing.T) {
	one := moor.Face{Side: 12, Shape: 1.5, Height: 1}
	load := func(of interface {
		Load(float64, ...moor.Face) (moor.Load, error)
	}, boats int,
	) float64 {
		row := one
		row.Row = boats
		l, err := of.Load(math.Pi/2, row)
		if err != nil {
			t.Fatal(err)
		}
		return l.Y
	}
	for n, want := range map[int]float64{0: 1, 1: 1, 2: 1.5, 3: 1.8, 5: 2.4} {
		almost(t, "boats in a row in wind", load(moor.Wind{Speed: 10}, n)/load(moor.Wind{Speed: 10}, 0), want, 1e-12)
		almost(t, "boats in a current", load(moor.Current{Speed: 1}, n)/load(moor.Current{Speed: 1}, 0), float64(max(n, 1)), 1e-12)
	}
}

// Every method: more wind, more water and more time never lower the sea; shallow
// water never raises it; beyond the time it takes to grow, time matters no more.
func TestWaveGrowth(t *testing.T) {
	base := moor.Fetch{Wind: 12, Length: 3000}
	for _, method := range []string{"SPM 1984", "CEM", "SMB", "revised SMB", "JONSWAP", "Stevenson"} {
		get := func(f moor.Fetch) moor.Sea {
			s, err := f.Waves(method)
			if err != nil || !(s.Height > 0) || s.Method != method || s.Source == nil {
				t.Fatalf("%s: %+v, %v", method, s, err)
			}
			return s
		}
		s := get(base)
		more := base
		more.Wind = 15
		if get(more).Height < s.Height || get(more).Period < s.Period {
			t.Errorf("%s: more wind lowers it", method)
		}
		more = base
		more.Length = 5000
		if get(more).Height < s.Height || get(more).Period < s.Period {
			t.Errorf("%s: more fetch lowers it", method)
		}
		deep := base
		deep.Depth = 300
		if d := get(deep); math.Abs(d.Height-s.Height) > 0.01*s.Height || math.Abs(d.Period-s.Period) > 0.04*s.Period {
			t.Errorf("%s: 300 m of water give %g m, deep water %g m", method, d.Height, s.Height)
		}
		shoal := base
		shoal.Depth = 0.5
		if d := get(shoal); d.Height > s.Height {
			t.Errorf("%s: shallow water raises it", method)
		} else if d.Height == s.Height && method != "Stevenson" && len(d.Notes) == 0 {
			t.Errorf("%s: the depth does nothing, and no note says so", method)
		}
		brief := base
		brief.Duration = 600
		if d := get(brief); d.Height > s.Height || s.Grown > 600 && !(d.Height < s.Height) || s.Grown == 0 && len(d.Notes) == 0 {
			t.Errorf("%s: 600 s of wind give %g m, lasting wind %g m, grown in %g s, notes %q", method, d.Height, s.Height, s.Grown, d.Notes)
		}
		if s.Grown > 0 && method != "CEM" { // its growth time rests on a rounded power
			brief.Duration = 1.0001 * s.Grown
			almost(t, method+" fully grown", get(brief).Height, s.Height, 1e-9)
			brief.Duration = 0.99 * s.Grown
			if !(get(brief).Height < s.Height) {
				t.Errorf("%s: not yet grown, yet as high", method)
			}
		}
		huge := moor.Fetch{Wind: 6, Length: 1e6}
		larger := moor.Fetch{Wind: 6, Length: 0.9e6}
		if d := get(huge); method != "Stevenson" && d.Height > 1.06*get(larger).Height {
			t.Errorf("%s: grows without end", method)
		}
	}
	shallow := moor.Fetch{Wind: 20, Length: 10000, Depth: 0.5}
	s, err := shallow.Waves("CEM")
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "CEM, a breaking sea", s.Height, 0.3, 1e-12)
	almost(t, "CEM, longest period", s.Period, 9.78*math.Sqrt(0.5/measure.Gravity), 1e-12)
}

// The methods disagree on a lake: the spread shows from 0.34 to 0.53 m.
func TestWaveSpread(t *testing.T) {
	all, err := moor.Fetch{Wind: 15, Length: 2000, Gravity: 9.81}.Spread()
	if err != nil || len(all) != 6 {
		t.Fatal(all, err)
	}
	for i := range all[1:] {
		if all[i].Height > all[i+1].Height {
			t.Error("not sorted")
		}
	}
	almost(t, "lowest", all[0].Height, 0.343, 0.001)
	almost(t, "highest", all[5].Height, 0.529, 0.001)
	if _, err := (moor.Fetch{Wind: 0.5, Length: 2000}).Spread(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("hardly any wind: %v", err)
	}
	if _, err := (moor.Fetch{Wind: 60, Length: 20}).Waves("CEM"); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a hurricane over a pond: %v", err)
	}
}

func TestFetches(t *testing.T) {
	f := moor.Fetches{100, 200, 300, 400, 500, 600, 700, 800}
	for bearing, want := range map[float64]float64{0: 100, 10: 200, 45: 200, 359: 800, 315: 800, 316: 800, -45: 800, 180: 500, 720 + 100: 400} {
		got, err := f.From(bearing * math.Pi / 180)
		if err != nil || got != want {
			t.Errorf("from %g degrees: %g m, want %g m, %v", bearing, got, want, err)
		}
	}
	f[3] = -1
	if _, err := f.From(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a negative fetch: %v", err)
	}
}

// Long waves feel the bottom: √(gd); short ones do not: gT²/2π.
func TestWavelengthLimits(t *testing.T) {
	l, err := (moor.Sea{Period: 1000}).Length(2)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "long", l/1000, math.Sqrt(measure.Gravity*2), 1e-4)
	l, err = (moor.Sea{Period: 1}).Length(1000)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "short", l, measure.Gravity/(2*math.Pi), 1e-14)
	// The dispersion holds along the way.
	for _, period := range []float64{0.5, 1, 2, 4, 8, 30} {
		for _, d := range []float64{0.1, 0.5, 2, 10, 50} {
			l, err := (moor.Sea{Period: period}).Length(d)
			if err != nil {
				t.Fatal(err)
			}
			almost(t, "dispersion", l, measure.Gravity*period*period/(2*math.Pi)*math.Tanh(2*math.Pi*d/l), 1e-13*l)
		}
	}
}

func TestSeen(t *testing.T) {
	s, err := moor.Seen(0.3, 21)
	if err != nil || s.Height != 0.3 || math.Abs(s.Period-2.1) > 1e-15 {
		t.Errorf("%+v, %v", s, err)
	}
	if _, err := moor.Seen(1, 10); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a metre high, a second long: %v", err)
	}
}

// The push below water vanishes with the draft, grows to ρgH tanh(kd)/k with a
// wall to the bottom, and does not overflow in deep water.
func TestPush(t *testing.T) {
	s := moor.Sea{Height: 0.4, Period: 2.5}
	none, _, err := s.Push(4, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "no draft, no freeboard", none, 0, 1e-9)
	wall, _, err := s.Push(4, 4, 0)
	if err != nil {
		t.Fatal(err)
	}
	l, _ := (moor.Sea{Period: 2.5}).Length(4)
	k := 2 * math.Pi / l
	almost(t, "wall", wall, 1000*measure.Gravity*0.4*math.Tanh(k*4)/k, 1e-9*wall)
	deep, drift, err := s.Push(9e4, 0.3, 1)
	if err != nil || math.IsNaN(deep) || !(deep > drift) {
		t.Errorf("deep water: %g, %g N/m, %v", deep, drift, err)
	}
	last := 0.0
	for _, f := range []float64{0, 0.1, 0.2, 0.4, 0.6} {
		c, _, err := s.Push(4, 0.3, f)
		if err != nil || c < last {
			t.Errorf("freeboard %g m: %g N/m after %g, %v", f, c, last, err)
		}
		last = c
	}
}

// The highest of a thousand waves is Rayleigh's in deep water, less where waves
// break, and never less than the sea itself.
func TestHighest(t *testing.T) {
	get := func(h, period, depth float64) float64 {
		s, err := moor.Sea{Height: h, Period: period}.Highest(depth)
		if err != nil || s.Period != period {
			t.Fatal(s, err)
		}
		return s.Height
	}
	// √(½ ln 1000) of the significant height: 1.858.
	almost(t, "deep", get(0.3, 2.5, 1e4)/0.3, math.Sqrt(math.Log(1000)/2), 2e-3)
	almost(t, "CIRIA", get(0.3, 2.5, 1.5)/0.3, 1.859/math.Sqrt(1.2), 1e-12)
	l, err := moor.Sea{Period: 1.5}.Length(4)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "steep", get(0.35, 1.5, 4), 0.142*l*math.Tanh(2*math.Pi*4/l), 1e-12)
	almost(t, "steeper than can be", get(0.6, 1.5, 4), 0.6, 0)
	for name, s := range map[string]moor.Sea{"height": {Period: 2}, "period": {Height: 1}} {
		if _, err := s.Highest(3); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := (moor.Sea{Height: 1, Period: 3}).Highest(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no water: %v", err)
	}
}

func TestWake(t *testing.T) {
	w := moor.Wake{Boat: 4, Height: 0.4, Distance: 30}
	s, err := w.At(240, 10)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "eight times as far, half as high", s.Height, 0.2, 1e-12)
	if _, err := (moor.Wake{Boat: 4, Distance: 30}).At(30, 10); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("a wake nobody saw: %v", err)
	}
	if _, err := w.At(30, 2); !errors.Is(err, measure.ErrRange) {
		t.Errorf("in shallow water: %v", err)
	}
	swing, err := s.Swing(10)
	l, _ := (moor.Sea{Period: s.Period}).Length(10)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "swing", swing, 2*math.Pi*0.2/l, 1e-12)
}

// The fender's spring takes up what the boat brings; off centre it brings less.
func TestImpact(t *testing.T) {
	boat := moor.Impact{Mass: 1500, Speed: 0.4, Draft: 0.4, Beam: 2.2, Length: 6, Block: 0.45}
	full, err := boat.Energy()
	if err != nil {
		t.Fatal(err)
	}
	boat.Arm, boat.Angle = 1.5, 1
	part, err := boat.Energy()
	if err != nil || !(part < full) {
		t.Errorf("off centre %g J, on centre %g J, %v", part, full, err)
	}
	bare, err := moor.Impact{Mass: 1500, Speed: 0.4}.Energy()
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "nothing known of the boat", bare, 120*1.8, 1e-9)
	// With either of draft and beam unknown, the water along is the most there is.
	for _, half := range []moor.Impact{{Mass: 1500, Speed: 0.4, Beam: 2}, {Mass: 1500, Speed: 0.4, Draft: 0.4}} {
		if e, err := half.Energy(); err != nil || e != bare {
			t.Errorf("%+v: %g J, %v", half, e, err)
		}
	}
	if e, err := (moor.Impact{Mass: 1500, Speed: 0.4, Draft: 0.4, Beam: 2, Along: 1.5}).Energy(); err != nil || math.Abs(e-180) > 1e-9 {
		t.Errorf("%g J, %v", e, err)
	}
	if _, err := (moor.Impact{Mass: 1500, Speed: 0.4, Along: 0.5}).Energy(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("less than the boat itself: %v", err)
	}
	f := moor.Fender{Stiffness: 2e4, Stroke: 0.15}
	force, stroke, err := f.Stop(full)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "spring", force*stroke/2, full, 1e-9)
	c, err := f.Check(full)
	if err != nil || c.Verdict() != measure.Holds {
		t.Errorf("%v, %v", c, err)
	}
	if c, err := f.Check(10 * full); err != nil || c.Verdict() != measure.Short {
		t.Errorf("%v, %v", c, err)
	}
	if c, err := (moor.Fender{Stroke: 0.1}).Check(full); err != nil || c.Verdict() != measure.NoAnswer {
		t.Errorf("stiffness unknown: %v, %v", c, err)
	}
	if force, stroke, err := (moor.Fender{Stiffness: 0.5}).Stop(1); err != nil || force != 1 || stroke != 2 {
		t.Errorf("a very soft fender: %g N, %g m, %v", force, stroke, err)
	}
	if _, _, err := (moor.Fender{}).Stop(1); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no fender: %v", err)
	}
}

func TestLoadsRefuse(t *testing.T) {
	nan := math.NaN()
	face := moor.Face{Name: "side", Side: 1}
	for name, f := range map[string]func() error{
		"wind":           func() error { _, err := moor.Wind{Speed: nan}.Load(0, face); return err },
		"wind pressure":  func() error { _, err := moor.Wind{Speed: -1}.Pressure(); return err },
		"wind height":    func() error { _, err := moor.Wind{Speed: 5}.To(50, 3); return err },
		"averaging":      func() error { _, err := moor.Wind{Speed: 5}.To(10, 0.1); return err },
		"air":            func() error { _, err := moor.Wind{Speed: 5, Air: 10}.Pressure(); return err },
		"direction":      func() error { _, err := moor.Wind{Speed: 5}.Load(nan, face); return err },
		"face":           func() error { _, err := moor.Wind{Speed: 5}.Load(0, moor.Face{Side: nan}); return err },
		"along":          func() error { _, err := moor.Wind{Speed: 5}.Load(0, moor.Face{At: [2]float64{nan, 0}}); return err },
		"across":         func() error { _, err := moor.Wind{Speed: 5}.Load(0, moor.Face{At: [2]float64{0, nan}}); return err },
		"current":        func() error { _, err := moor.Current{Speed: 2}.Load(0, face); return err },
		"aground":        func() error { _, err := moor.Current{Speed: 1, Depth: 1, Draft: 2}.Load(0, face); return err },
		"current face":   func() error { _, err := moor.Current{Speed: 1}.Load(0, moor.Face{End: -1}); return err },
		"laminar":        func() error { _, err := moor.Current{Speed: 0.001}.Friction(1, 1); return err },
		"wetted":         func() error { _, err := moor.Current{Speed: 1}.Friction(nan, 1); return err },
		"shielding":      func() error { _, err := moor.Wind{Speed: 1}.Load(0, moor.Face{Row: -1}); return err },
		"fetch":          func() error { _, err := moor.Fetch{Wind: 10, Length: nan}.Waves("CEM"); return err },
		"gravity":        func() error { _, err := moor.Fetch{Wind: 10, Length: 500, Gravity: 1}.Waves("CEM"); return err },
		"bearing":        func() error { _, err := moor.Fetches{}.From(nan); return err },
		"wave period":    func() error { _, err := moor.Sea{}.Length(1); return err },
		"seen":           func() error { _, err := moor.Seen(nan, 20); return err },
		"push":           func() error { _, _, err := moor.Sea{Height: 1, Period: 3}.Push(1, 2, 1); return err },
		"wake":           func() error { _, err := moor.Wake{Boat: 3, Height: nan, Distance: 10}.At(10, 10); return err },
		"swing":          func() error { _, err := moor.Sea{}.Swing(1); return err },
		"swing in none":  func() error { _, err := moor.Sea{Height: 1, Period: 2}.Swing(0); return err },
		"boat":           func() error { _, err := moor.Impact{Mass: -1}.Energy(); return err },
		"deep boat":      func() error { _, err := moor.Impact{Mass: 1, Beam: 1, Draft: 5}.Energy(); return err },
		"block":          func() error { _, err := moor.Impact{Mass: 1, Block: 2}.Energy(); return err },
		"softness":       func() error { _, err := moor.Impact{Mass: 1, Soft: 0.1}.Energy(); return err },
		"fender":         func() error { _, err := moor.Fender{Stroke: nan}.Check(1); return err },
		"cement mixer":   func() error { _, err := moor.Impact{Mass: 1, Speed: 9}.Energy(); return err },
		"pile stress":    func() error { _, err := moor.Post{}.Stress(1, 1, 0); return err },
		"no wind at all": func() error { _, err := moor.Fetch{Length: 500}.Waves("SMB"); return err },
	} {
		var e *measure.Error
		if err := f(); !errors.As(err, &e) || !errors.Is(err, measure.ErrRange) || e.Field == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := moor.Factor("shape in wind", "dome"); !errors.Is(err, measure.ErrName) {
		t.Errorf("shape: %v", err)
	}
	if _, err := (moor.Fetch{Wind: 10, Length: 500}).Waves("guess"); !errors.Is(err, measure.ErrName) {
		t.Errorf("method: %v", err)
	}
}

// Beside an error stands no number that could be taken for a result.
func TestErrorsCarryNothing(t *testing.T) {
	nan := math.NaN()
	one := func(x float64, err error) ([]float64, error) { return []float64{x}, err }
	two := func(x, y float64, err error) ([]float64, error) { return []float64{x, y}, err }
	for name, f := range map[string]func() ([]float64, error){
		"pressure": func() ([]float64, error) { return one(moor.Wind{Speed: nan}.Pressure()) },
		"friction": func() ([]float64, error) { return one(moor.Current{Speed: nan}.Friction(1, 1)) },
		"laminar":  func() ([]float64, error) { return one(moor.Current{Speed: 1e-3}.Friction(1, 1)) },
		"length":   func() ([]float64, error) { return one(moor.Sea{}.Length(1)) },
		"push":     func() ([]float64, error) { return two(moor.Sea{}.Push(1, 0, 0)) },
		"swing":    func() ([]float64, error) { return one(moor.Sea{}.Swing(1)) },
		"no swing": func() ([]float64, error) { return one(moor.Sea{Height: 1, Period: 1}.Swing(nan)) },
		"fetch":    func() ([]float64, error) { return one(moor.Fetches{nan}.From(0)) },
		"bearing":  func() ([]float64, error) { return one(moor.Fetches{}.From(nan)) },
		"energy":   func() ([]float64, error) { return one(moor.Impact{Mass: nan}.Energy()) },
		"along":    func() ([]float64, error) { return one(moor.Impact{Mass: 1, Along: 9}.Energy()) },
		"block":    func() ([]float64, error) { return one(moor.Impact{Mass: 1, Block: 9}.Energy()) },
		"soft":     func() ([]float64, error) { return one(moor.Impact{Mass: 1, Soft: 9}.Energy()) },
		"stop":     func() ([]float64, error) { return two(moor.Fender{}.Stop(nan)) },
		"fender":   func() ([]float64, error) { return two(moor.Fender{}.Stop(1)) },
		"weight":   func() ([]float64, error) { return one(moor.DeadWeight{Mass: 1}.Weight()) },
		"mass":     func() ([]float64, error) { return one(moor.DeadWeight{Mass: nan, Density: 2400}.Weight()) },
		"floats":   func() ([]float64, error) { return one(moor.DeadWeight{Mass: 1, Density: 900}.Weight()) },
		"needed":   func() ([]float64, error) { return one(moor.DeadWeight{Density: 2400, Bottom: "sand"}.Needed(nan, 0)) },
		"material": func() ([]float64, error) { return one(moor.DeadWeight{Bottom: "sand"}.Needed(1, 0)) },
		"mud":      func() ([]float64, error) { return one(moor.DeadWeight{Density: 2400, Bottom: "soft mud"}.Needed(1, 0)) },
		"steep": func() ([]float64, error) {
			return one(moor.DeadWeight{Density: 2400, Bottom: "sand", Slope: 1}.Needed(1, 0))
		},
		"angle":       func() ([]float64, error) { return one(moor.Ramp{}.Angle(0)) },
		"too short":   func() ([]float64, error) { return one(moor.Ramp{Length: 1, Width: 1, Shore: 2}.Angle(0)) },
		"slide":       func() ([]float64, error) { return one(moor.Ramp{}.Slide(0, 1)) },
		"ramp needed": func() ([]float64, error) { return one(moor.Ramp{}.Needed(0, 1)) },
		"reaction":    func() ([]float64, error) { return one(moor.Ramp{}.Reaction(0, 0)) },
		"moment":      func() ([]float64, error) { return one(moor.Ramp{}.Moment(0)) },
		"haul":        func() ([]float64, error) { return one(moor.Haul{}.Pull()) },
		"cleat":       func() ([]float64, error) { return two(moor.Cleat{}.On(1, 1)) },
		"stress":      func() ([]float64, error) { return one(moor.Post{}.Stress(nan, 1, 1)) },
		"snow":        func() ([]float64, error) { return one(moor.Snow{}.Pressure()) },
		"deep snow":   func() ([]float64, error) { return one(moor.Snow{Depth: nan}.Pressure()) },
		"no drift":    func() ([]float64, error) { return two(moor.Snow{}.Drift(1)) },
		"drift":       func() ([]float64, error) { return two(moor.Snow{Ground: 1}.Drift(nan)) },
		"tension":     func() ([]float64, error) { return one((&moor.Line{}).Tension(0, moor.Hang{})) },
		"dip":         func() ([]float64, error) { return one((&moor.Line{}).Dip(moor.Hang{})) },
	} {
		xs, err := f()
		if err == nil {
			t.Errorf("%s: no error", name)
		}
		for _, x := range xs {
			if x != 0 {
				t.Errorf("%s: %g beside %v", name, x, err)
			}
		}
	}
}
