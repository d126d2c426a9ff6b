package lumber_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// ours fails unless an error is the library's own.
func ours(t *testing.T, err error) {
	t.Helper()
	var e *measure.Error
	if err != nil && !errors.As(err, &e) {
		t.Fatalf("foreign error %v", err)
	}
}

// FuzzSize: a size that is read is positive, green no smaller than dry, and turns
// with its name.
func FuzzSize(f *testing.F) {
	for _, s := range []string{"2x8", "5/4x6", "2-1/2 x 4", "6×6", "8x2", "x", "2x", "1e1x12", "2x8x12", "99x99"} {
		f.Add(s, 3.66)
	}
	f.Fuzz(func(t *testing.T, name string, length float64) {
		s, err := lumber.Size(name)
		ours(t, err)
		green, errGreen := lumber.GreenSize(name)
		if (err == nil) != (errGreen == nil) {
			t.Fatalf("%q: %v, green %v", name, err, errGreen)
		}
		bf, errFeet := lumber.BoardFeet(name, length)
		ours(t, errFeet)
		if err != nil {
			return
		}
		if !(s.Area() > 0 && green.Width >= s.Width && green.Depth >= s.Depth && s.Torsion() > 0 && s.TorsionModulus() > 0) {
			t.Fatalf("%q: %v, green %v", name, s, green)
		}
		// A nominal piece holds no less than the dressed one.
		if errFeet == nil && !(bf*measure.Foot*measure.Foot*measure.Inch >= green.Area()*length*(1-1e-12)) {
			t.Fatalf("%q: %g board feet", name, bf)
		}
	})
}

// FuzzSection: turning twice changes nothing, Torsion never exceeds the polar
// moment.
func FuzzSection(f *testing.F) {
	f.Add(0.038, 0.184)
	f.Add(0.0, -1.0)
	f.Add(1e-9, 1.0)
	f.Fuzz(func(t *testing.T, w, d float64) {
		s := lumber.Section{Width: w, Depth: d}
		for _, x := range []float64{s.Area(), s.Modulus(), s.Inertia(), s.Torsion(), s.TorsionModulus()} {
			if !(x >= 0) || math.IsInf(x, 0) {
				t.Fatalf("%v: %g", s, x)
			}
		}
		if s.Torsion() > (s.Inertia()+s.Turned().Inertia())*(1+1e-12) {
			t.Fatalf("%v: J %g above the polar moment", s, s.Torsion())
		}
	})
}

// FuzzLookup: what is found fits the section it was asked for.
func FuzzLookup(f *testing.F) {
	f.Add("spf", "#2", 0.038, 0.184)
	f.Add("southern pine", "stud", 0.038, 0.30)
	f.Add("dfl", "No.1 & Btr", 0.14, 0.14)
	f.Add("", "", 0.0, 0.0)
	f.Fuzz(func(t *testing.T, species, grade string, w, d float64) {
		s := lumber.Section{Width: w, Depth: d}
		g, err := lumber.Lookup(species, grade, s)
		ours(t, err)
		if err != nil {
			if g != (lumber.Grade{}) {
				t.Fatalf("%v with %v", g, err)
			}
			return
		}
		if _, err := (lumber.Member{Section: s, Grade: g, Length: 1}).Adjusted(lumber.Permanent); err != nil {
			t.Fatalf("%+v does not fit %v: %v", g, s, err)
		}
		least, err := lumber.Weakest(grade, s, species)
		if err != nil || least != g {
			t.Fatalf("weakest of one: %+v, %v", least, err)
		}
	})
}

// FuzzStamp: a stamp that is read has values at every size its grade has.
func FuzzStamp(f *testing.F) {
	for _, s := range []string{"S-P-F No.2 KD-HT", "2 x", "#1 SYP", "UC4B .60", "1/2 1/2 1/2", "no.1/no.2 doug fir (n)", "HF SPF", "|||"} {
		f.Add(s)
	}
	size, err := lumber.Size("2x4")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		st, err := lumber.ReadStamp(text)
		ours(t, err)
		if err != nil {
			return
		}
		again, err := lumber.ReadStamp(st.Species + " " + st.Grade + " " + st.Use)
		if err != nil || again.Species != st.Species || again.Grade != st.Grade || again.Use != st.Use {
			t.Fatalf("%q: %+v reads again as %+v, %v", text, st, again, err)
		}
		_, err = st.Lookup(size)
		ours(t, err)
	})
}

// pick brings a number into a range, so that most fuzzed data is good.
func pick(x, lo, hi float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	return lo + math.Abs(math.Remainder(x, 2*(hi-lo)))
}

// FuzzMember: wetter, incised, longer loaded, hotter, slenderer is never stronger,
// whatever the row, the section and the lengths.
func FuzzMember(f *testing.F) {
	f.Add(uint(3), 1.5, 7.25, 3.0, 1.0, 20.0, 1, true)
	f.Add(uint(100), 3.5, 3.5, 2.0, 0.0, 45.0, 3, false)
	f.Add(uint(160), 5.5, 11.25, 5.0, 5.0, 60.0, 2, true)
	f.Add(uint(7), 1.5, math.NaN(), 5.0, 5.0, 60.0, 2, true)
	rows := lumber.Grades()
	f.Fuzz(func(t *testing.T, row uint, w, d, length, unbraced, celsius float64, plies int, flat bool) {
		g := rows[row%uint(len(rows))]
		s := lumber.Section{Width: pick(w, 0.5, 14) * measure.Inch, Depth: pick(d, 0.5, 14) * measure.Inch}
		g, err := lumber.Lookup(g.Species, g.Name, s)
		ours(t, err)
		if err != nil {
			return
		}
		m := lumber.Member{
			Section: s, Grade: g, Length: pick(length, 0.1, 9), Unbraced: pick(unbraced, 0, 9),
			Temperature: pick(celsius, -40, 65), Plies: plies, Flat: flat,
		}
		worst, err := m.Adjusted(lumber.Permanent)
		ours(t, err)
		if err != nil {
			return
		}
		for symbol, s := range all(worst) {
			if !(s.Value >= 0) || (s.Value == 0) != (s.Err != nil) {
				t.Fatalf("%s %+v", symbol, s)
			}
			ours(t, s.Err)
			for _, f := range s.Factors {
				if !(f.Value > 0 && f.Value <= 1.6) {
					t.Fatalf("%s: %v", symbol, f)
				}
			}
		}
		for _, change := range []func(*lumber.Member){
			func(m *lumber.Member) { m.Dry = true },
			func(m *lumber.Member) { m.Smooth = true },
			func(m *lumber.Member) { m.Temperature -= 20 },
			func(m *lumber.Member) { m.Unbraced, m.Length = m.Unbraced/2, m.Length/2 },
			func(m *lumber.Member) { m.Held = true },
			func(m *lumber.Member) { m.Repetitive = true },
		} {
			better := m
			change(&better)
			v, err := better.Adjusted(lumber.Permanent)
			if err != nil {
				continue // colder than the table
			}
			noStronger(t, g.Species+" "+g.Name, worst, v)
		}
		for d := lumber.TenYears; d <= lumber.TenMinutes; d++ {
			noStronger(t, g.Species+" "+g.Name, worst, adjusted(t, m, d))
		}
	})
}

// FuzzCheck: a greater demand is never better, and no verdict comes of a number
// that is none.
func FuzzCheck(f *testing.F) {
	f.Add(1000.0, 50.0, 2000.0, -500.0, 3000.0, 0.05, 0.001, 0.003, true)
	f.Add(1.0, 0.0, -1.0, 800.0, -3.0, 0.0, 0.0, 0.0, false)
	f.Add(math.NaN(), 0.0, -1.0, 800.0, -3.0, 0.0, 0.0, 0.0, false)
	f.Fuzz(func(t *testing.T, moment, across, shear, axial, reaction, bearing, long, short float64, dry bool) {
		m := checked(t)
		m.Dry, m.Held = dry, !dry
		d := lumber.Demand{
			Moment: moment, FlatMoment: across, Shear: shear, Axial: axial,
			Reaction: reaction, Bearing: bearing, Long: long, Short: short,
		}
		checks, err := m.Check(d, lumber.Snow)
		ours(t, err)
		if err != nil {
			return
		}
		more := d
		for _, x := range []*float64{&more.Moment, &more.FlatMoment, &more.Shear, &more.Axial, &more.Reaction, &more.Long, &more.Short} {
			*x *= 2
		}
		harder, err := m.Check(more, lumber.Snow)
		ours(t, err)
		if err != nil {
			return
		}
		if len(checks) != len(harder) || len(checks) < 2 {
			t.Fatalf("%d checks, %d", len(checks), len(harder))
		}
		for i, c := range checks {
			if c.Verdict() != measure.NoAnswer && (math.IsNaN(c.Value) || math.IsNaN(c.Limit)) {
				t.Fatalf("%v", c)
			}
			// Tension may relieve the compression side: sums of both are left out.
			if axial <= 0 && c.Verdict() == measure.Short && harder[i].Verdict() == measure.Holds {
				t.Fatalf("%v, yet doubled %v", c, harder[i])
			}
		}
	})
}

// FuzzNotch: less wood carries less shear, and a joint in less depth too.
func FuzzNotch(f *testing.F) {
	f.Add(0.03, 0.05, 0.5, 100.0, true, false)
	f.Add(0.18, 0.0, 0.0, -5.0, false, true)
	f.Add(math.Inf(1), 0.0, 0.0, -5.0, false, true)
	f.Fuzz(func(t *testing.T, depth, length, from, shear float64, inner, top bool) {
		m := checked(t)
		n := lumber.Notch{Depth: depth, Length: length, From: from, Inner: inner, Top: top}
		checks, err := m.CheckNotch(n, shear, lumber.TenYears)
		ours(t, err)
		whole, errWhole := m.CheckJoint(m.Section.Depth, 5, shear, lumber.TenYears)
		ours(t, errWhole)
		part, errPart := m.CheckJoint(depth, length, shear, lumber.TenYears)
		ours(t, errPart)
		if errPart == nil && part.Limit > whole.Limit {
			t.Fatalf("joint carries %v of %v", part, whole)
		}
		if err != nil {
			return
		}
		if !(checks[0].Limit > 0 && checks[0].Limit <= whole.Limit*(1+1e-12)) {
			t.Fatalf("%+v: %v of %v", n, checks[0], whole)
		}
		n.Depth *= 0.5
		less, err := m.CheckNotch(n, shear, lumber.TenYears)
		if err != nil || less[0].Limit < checks[0].Limit*(1-1e-12) {
			t.Fatalf("half the notch: %v, %v, %v", less, checks, err)
		}
	})
}

// FuzzSpan: more load or a wider spacing never spans farther; overhangs stay
// within a quarter; beams likewise; boards and relief keep their bounds.
func FuzzSpan(f *testing.F) {
	f.Add(0.4, 500.0, 2000.0, 3.0, 0.5)
	f.Add(0.6, 0.0, 1.0, 0.1, 0.0)
	f.Add(math.NaN(), 0.0, -1.0, 0.1, 0.0)
	f.Fuzz(func(t *testing.T, spacing, dead, live, back, over float64) {
		m := piece(t, "hf", "2", "2x8")
		m.Repetitive = true
		span, _, err := m.Span(spacing, dead, live)
		ours(t, err)
		if err == nil {
			for _, x := range [][3]float64{{spacing * 1.1, dead, live}, {spacing, dead + 100, live}, {spacing, dead, live * 1.1}} {
				if less, _, err := m.Span(x[0], x[1], x[2]); err == nil && less > span*(1+1e-12) {
					t.Fatalf("%v spans %g, less load %g", x, less, span)
				}
			}
			if !(span > 0) {
				t.Fatalf("span %g", span)
			}
		}
		a, _, err := m.Overhang(back, live, 0)
		ours(t, err)
		if err == nil && !(a >= 0 && a <= back/4) {
			t.Fatalf("overhang %g of %g", a, back)
		}
		beam, _, err := m.BeamSpan(back, over, dead, live)
		ours(t, err)
		if less, _, errMore := m.BeamSpan(back, over, dead, live*1.1); err == nil && errMore == nil && !(less <= beam && beam > 0) {
			t.Fatalf("beam %g, more load %g", beam, less)
		}
		b := lumber.Board{Section: lumber.Section{Width: over, Depth: 0.14}, Rating: back}
		c, err := b.Check(spacing)
		ours(t, err)
		if err == nil && c.Verdict() == measure.Holds && (over < 0.0254-1e-8 || spacing > math.Max(0.6096, back)) {
			t.Fatalf("%+v at %g: %v", b, spacing, c)
		}
		_, sag, err := b.Under(live, spacing, 1, false, 8e9)
		ours(t, err)
		if _, less, errTwo := b.Under(live, spacing, 2, false, 8e9); err == nil && errTwo == nil && less > sag {
			t.Fatalf("two spans sag %g, one %g", less, sag)
		}
		r, err := lumber.ShearRelief(over, dead, live, back)
		ours(t, err)
		if err == nil && !(r >= 0 && r <= dead*over+live) {
			t.Fatalf("relief %g", r)
		}
	})
}

// FuzzFactors: every factor keeps its range; longer, slenderer is never more.
func FuzzFactors(f *testing.F) {
	f.Add(1e7, 4e9, 2.0, 0.18, 0.038, 20.0)
	f.Add(-1.0, 4e9, math.Inf(1), 0.18, 0.038, 1.0)
	f.Fuzz(func(t *testing.T, star, emin, le, depth, width, slender float64) {
		cl, err := lumber.BeamStability(star, emin, le, depth, width)
		ours(t, err)
		if err == nil {
			if !(cl.Value >= 0 && cl.Value <= 1) {
				t.Fatalf("CL %v", cl)
			}
			if more, err := lumber.BeamStability(star, emin, le*1.2, depth, width); err == nil && more.Value > cl.Value*(1+1e-12) {
				t.Fatalf("CL %v, longer %v", cl, more)
			}
		}
		cp, err := lumber.ColumnStability(star, emin, slender)
		ours(t, err)
		if err == nil && !(cp.Value >= 0 && cp.Value <= 1) {
			t.Fatalf("CP %v", cp)
		}
		cb, err := lumber.BearingArea(le, true)
		ours(t, err)
		if err == nil && !(cb.Value >= 1 && cb.Value <= 1.75+1e-12) {
			t.Fatalf("Cb %v", cb)
		}
		for _, loading := range []string{"", "uniform", "cantilever, point at the tip", "equal end moments"} {
			x, err := lumber.EffectiveLength(loading, le, depth)
			ours(t, err)
			if err == nil && !(x > 0.89*le && x <= 2.07*le) {
				t.Fatalf("%q: le %g of lu %g", loading, x, le)
			}
		}
		for p := lumber.Fb; p <= lumber.Emin; p++ {
			wet, err := lumber.Temperature(p, slender, false)
			ours(t, err)
			dry, errDry := lumber.Temperature(p, slender, true)
			if (err == nil) != (errDry == nil) || wet.Value > dry.Value || (err == nil && !(wet.Value >= 0.5)) {
				t.Fatalf("Ct %v wet, %v dry", wet, dry)
			}
		}
	})
}

// FuzzMoisture: density grows with moisture; a gap closes on the way back.
func FuzzMoisture(f *testing.F) {
	f.Add(0.55, 0.19, 0.15, 0.14, 0.003)
	f.Add(0.35, 0.80, 0.08, 0.09, 0.0)
	f.Add(math.NaN(), 0.80, -0.08, 0.09, 0.0)
	f.Fuzz(func(t *testing.T, g, m, now, width, gap float64) {
		rho, err := lumber.Density(g, m)
		ours(t, err)
		full, soaked, errFull := lumber.PoreFull(g)
		ours(t, errFull)
		if err == nil && !(rho > 0 && rho <= soaked*(1+1e-9) && m <= full*(1+1e-9)) {
			t.Fatalf("G %g at %g: %g of %g", g, m, rho, soaked)
		}
		if more, errMore := lumber.Density(g, m+0.01); err == nil && errMore == nil && more <= rho {
			t.Fatalf("G %g at %g: %g, wetter %g", g, m, rho, more)
		}
		opened, err := lumber.Gap(width, m, gap, now)
		ours(t, err)
		if back, errBack := lumber.Gap(width-(opened-gap), now, opened, m); err == nil && errBack == nil && math.Abs(back-gap) > 1e-9 {
			t.Fatalf("gap %g comes back as %g", gap, back)
		}
		w, _, err := lumber.Shrinkage(now)
		ours(t, err)
		if err == nil && !(w >= 0 && w < 0.05) {
			t.Fatalf("shrinks %g", w)
		}
		dock := lumber.Member{Section: lumber.Section{Width: width, Depth: gap}, Length: 10 * m, Grade: lumber.Grade{G: lumber.Value{Printed: g, Unit: 1}}}
		weights, err := dock.Weights()
		ours(t, err)
		if err == nil && !(weights.Light <= weights.Bought && weights.Bought < weights.Damp && weights.Damp < weights.Soaked) {
			t.Fatalf("%+v", weights)
		}
		scaled, err := weights.Weighed(now)
		ours(t, err)
		if err == nil && !(scaled.Light <= scaled.Bought && scaled.Bought <= scaled.Damp && scaled.Damp <= scaled.Soaked) {
			t.Fatalf("%+v", scaled)
		}
		cuts, err := lumber.FieldTreatment(width)
		ours(t, err)
		if err == nil && !(cuts.Volume >= 0) {
			t.Fatalf("%+v", cuts)
		}
		wall, err := lumber.HoleArea(width, gap)
		ours(t, err)
		if err == nil && !(wall >= 0) {
			t.Fatalf("hole %g", wall)
		}
		tree := lumber.Tree{Radial: lumber.Value{Printed: 4, Unit: 0.01}, Tangential: lumber.Value{Printed: 8, Unit: 0.01}}
		r, tg, err := tree.Shrunk(m)
		ours(t, err)
		if err == nil && !(r >= 0 && r <= 0.04 && tg <= 0.08 && r <= tg) {
			t.Fatalf("%g, %g", r, tg)
		}
	})
}

// FuzzOwnGrade: values of one's own are reduced, never raised beyond what the
// duration and the flat use allow, and a missing one has its reason.
func FuzzOwnGrade(f *testing.F) {
	f.Add(8e6, 1e6, 2e6, 1e7, 9e9, 3e9, 0.05, 0.2)
	f.Add(0.0, -1e6, 2e6, 1e7, 9e9, 3e9, 0.05, 0.2)
	f.Add(1.0, math.NaN(), 2e6, 1e7, 9e9, math.Inf(1), 0.14, 0.14)
	f.Fuzz(func(t *testing.T, fb, fv, perp, fc, e, emin, w, d float64) {
		own := func(x float64) lumber.Value { return lumber.Value{Printed: x, Unit: 1} }
		m := lumber.Member{
			Section: lumber.Section{Width: w, Depth: d}, Length: 1.5,
			Grade: lumber.Grade{Name: "as tested", Fb: own(fb), Fv: own(fv), FcPerp: own(perp), Fc: own(fc), E: own(e), Emin: own(emin)},
		}
		v, err := m.Adjusted(lumber.TenYears)
		ours(t, err)
		if err != nil {
			return
		}
		for symbol, s := range all(v) {
			ours(t, s.Err)
			if math.IsNaN(s.Value) || s.Value < 0 || s.Value > 1.2*s.Reference.SI() || (s.Err != nil && s.Value != 0) {
				t.Fatalf("%s %+v", symbol, s)
			}
			if s.Reference.SI() == 0 && s.Err == nil {
				t.Fatalf("%s has a value out of none", symbol)
			}
		}
		if got := m.Whole(); got != m.Section {
			t.Fatalf("one ply is %v", got)
		}
	})
}
