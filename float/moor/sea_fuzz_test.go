package moor_test

import (
	"math"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// FuzzSea: the highest wave is no less than the sea's and no more than 1.859 of it, a
// hinge swings by no more than the slope of both sides, the method asked for is among the
// spread, and a weather's waves are those of its fetch.
func FuzzSea(f *testing.F) {
	f.Add(0.3, 2.0, 4.0, 11.0, 800.0, 0.0, "SMB", 0.4)
	f.Add(1.0, 20.0, 5e-324, 60.0, 1e6, 1e-300, "Stevenson", -7.0)
	f.Add(-1.0, math.NaN(), 0.0, math.Inf(1), 5.0, -1.0, "", math.NaN())
	f.Fuzz(func(t *testing.T, height, period, depth, wind, length, duration float64, method string, θ float64) {
		s := moor.Sea{Height: height, Period: period}
		if high, err := s.Highest(depth); err != nil {
			known(t, err)
		} else if !finite(high.Height) || high.Height < height || high.Height > height*1.859*(1+1e-12) || high.Period != period {
			t.Fatalf("the highest of %+v is %+v", s, high)
		}
		if swing, err := s.Swing(depth); err != nil {
			known(t, err)
		} else {
			l, err := s.Length(depth)
			if err != nil || !finite(swing) || math.Abs(swing-2*math.Pi*height/l) > 1e-9*swing {
				t.Fatalf("%+v swings %g rad over %g m, %v", s, swing, l, err)
			}
		}
		fetch := moor.Fetch{Wind: wind, Length: length, Depth: depth, Duration: duration}
		one, err := fetch.Waves(method)
		if err != nil {
			known(t, err)
			return
		}
		if !finite(one.Height, one.Period, one.Grown) || one.Height < 0 || one.Method != method || one.Source == nil {
			t.Fatalf("%+v raises %+v", fetch, one)
		}
		if all, err := fetch.Spread(); err == nil && !(all[0].Height <= one.Height && one.Height <= all[len(all)-1].Height) {
			t.Fatalf("%+v outside %+v to %+v", one, all[0], all[len(all)-1])
		}
		w := moor.Weather{Wind: moor.Wind{Speed: wind}, Depth: depth, Method: method}
		for i := range w.Fetches {
			w.Fetches[i] = length
		}
		if at, err := w.Sea(θ); err != nil {
			known(t, err)
		} else if still, err := (moor.Fetch{Wind: wind, Length: length, Depth: depth}).Waves(method); err != nil || math.Abs(at.Height-still.Height) > 1e-9*still.Height {
			t.Fatalf("weather has %+v, its fetch %+v, %v", at, still, err)
		}
	})
}

// FuzzWind: a wind taken to another height and time and back is what it was, higher up it
// is no weaker, over a longer time no stronger, and it presses with its square.
func FuzzWind(f *testing.F) {
	f.Add(11.0, 10.0, 3600.0, 2.0, 60.0, "")
	f.Add(11.0, 10.0, 3.0, 0.3, 36000.0, "C")
	f.Add(math.NaN(), 0.0, -1.0, 1e9, 5e-324, "x")
	f.Fuzz(func(t *testing.T, speed, height, averaging, to, over float64, exposure string) {
		w := moor.Wind{Speed: speed, Height: height, Averaging: averaging, Exposure: exposure}
		if p, err := w.Pressure(); err != nil {
			known(t, err)
		} else if half, err := (moor.Wind{Speed: speed / 2, Height: height, Averaging: averaging, Exposure: exposure}).Pressure(); !finite(p) || p < 0 || err == nil && math.Abs(p-4*half) > 1e-9*p {
			t.Fatalf("%+v presses with %g Pa, half of it with %g", w, p, half)
		}
		there, err := w.To(to, over)
		if err != nil {
			known(t, err)
			return
		}
		if !finite(there.Speed) || there.Speed < 0 {
			t.Fatalf("%+v is %+v", w, there)
		}
		if up, err := w.To(to*1.1, over); err == nil && up.Speed < there.Speed*(1-1e-12) {
			t.Fatalf("%g m/s, higher up %g", there.Speed, up.Speed)
		}
		if long, err := w.To(to, over*1.1); err == nil && long.Speed > there.Speed*(1+1e-9) {
			t.Fatalf("%g m/s, over a longer time %g", there.Speed, long.Speed)
		}
		if exposure == "" && height >= 0.3 && averaging >= 1 {
			if back, err := there.To(height, averaging); err == nil && math.Abs(back.Speed-speed) > 1e-9*speed {
				t.Fatalf("%+v comes back as %+v", w, back)
			}
		}
	})
}

// FuzzRamp: a ramp falls by its angle, lays on the dock half of its even load and all of
// the rest, and more load never bends it less.
func FuzzRamp(f *testing.F) {
	f.Add(5.0, 1.0, 200.0, 1.5, 0.4, 0.2, 1200.0, 800.0)
	f.Add(1e-3, 0.0, -1.0, 0.0, 1e5, math.NaN(), math.Inf(1), -1.0)
	f.Fuzz(func(t *testing.T, length, width, mass, shore, deck, level, live, point float64) {
		r := moor.Ramp{Length: length, Width: width, Mass: mass, Shore: shore, Deck: deck}
		if a, err := r.Angle(level); err != nil {
			known(t, err)
		} else if !(math.Abs(a) <= math.Pi/2) || math.Abs(length*math.Sin(a)-(shore-deck-level)) > 1e-9*(math.Abs(shore)+math.Abs(deck)+math.Abs(level)+length) {
			t.Fatalf("%+v at %g falls by %g", r, level, a)
		}
		if n, err := r.Reaction(live, point); err != nil {
			known(t, err)
		} else if want := (mass*measure.Gravity+live*length*width)/2 + point; math.Abs(n-want) > 1e-9*math.Abs(want) {
			t.Fatalf("%+v lays %g N down, want %g", r, n, want)
		}
		m, err := r.Moment(live)
		if err != nil {
			known(t, err)
		} else if more, err := r.Moment(2 * live); !(m >= 0) || !finite(m) || err == nil && more < m {
			t.Fatalf("%+v bends with %g, twice the load %g N·m", r, m, more)
		}
	})
}

// FuzzHang: the tension at either end is that of its pulls, and so are the angles; weight
// in water is no more than in air, and a row that is listed has its source.
func FuzzHang(f *testing.F) {
	f.Add(100.0, 50.0, 0.0, 900.0, 2400.0, 0.5, 6.0, 3.0, "shackle")
	f.Add(0.0, 5.0, -5.0, 0.0, 0.0, 0.0, 0.0, 0.0, "")
	f.Add(math.NaN(), math.Inf(1), 1e300, -1.0, 1.0, 99.0, -1.0, 5e-324, "\x00")
	f.Fuzz(func(t *testing.T, pull, down, lift, mass, density, speed, area, length float64, kind string) {
		h := moor.Hang{Pull: pull, Down: down, Lift: lift}
		if pull >= 0 && pull < 1e100 && math.Abs(down) < 1e100 && math.Abs(lift) < 1e100 {
			for _, end := range [][3]float64{{h.Tension(), h.Angle(), down}, {h.GroundTension(), h.GroundAngle(), lift}} {
				if tension, angle := end[0], end[1]; !(math.Abs(angle) <= math.Pi/2) || math.Abs(tension*math.Sin(angle)-end[2]) > 1e-9*tension || tension < pull {
					t.Fatalf("%+v: %g N at %g", h, tension, angle)
				}
			}
		}
		if w, err := (moor.DeadWeight{Mass: mass, Density: density}).Weight(); err != nil {
			known(t, err)
		} else if !finite(w) || w > mass*measure.Gravity*(1+1e-12) {
			t.Fatalf("%g kg weighs %g N in water", mass, w)
		}
		c := moor.Current{Speed: speed}
		if d, err := c.Friction(area, length); err != nil {
			known(t, err)
		} else if twice, err := c.Friction(2*area, length); !finite(d) || d < 0 || err == nil && math.Abs(twice-2*d) > 1e-9*d {
			t.Fatalf("%+v drags %g N, twice the area %g", c, d, twice)
		}
		rows, err := moor.Gears(kind)
		if err != nil {
			known(t, err)
			return
		}
		for _, g := range rows {
			if g.Source == nil || kind != "" && g.Kind != kind {
				t.Fatalf("%q lists %+v", kind, g)
			}
		}
	})
}
