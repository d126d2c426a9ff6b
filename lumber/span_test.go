package lumber_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestSpanMeetsItsLimits: at the span, exactly one of the member checks is at its
// limit and none is beyond.
func TestSpanMeetsItsLimits(t *testing.T) {
	const dead, live = 10 * measure.PSF, 40 * measure.PSF
	governs := map[string]bool{}
	members(t, func(name string, m lumber.Member) {
		m.Repetitive = true
		for _, spacing := range []float64{0.3048, 0.4064, 0.6096} {
			span, c, err := m.Span(spacing, dead, live)
			if err != nil {
				t.Fatal(name, err)
			}
			if span > 30 {
				continue
			}
			governs[c.Name] = true
			m := m
			m.Length, m.Held = span, true
			v := adjusted(t, m, lumber.TenYears)
			w := live * spacing
			demand := lumber.Demand{
				Moment: (dead + live) * spacing * span * span / 8,
				Short:  5 * w * math.Pow(span, 4) / (384 * v.E.Value * m.Section.Inertia()),
			}
			checks, err := m.Check(demand, lumber.TenYears)
			if err != nil {
				t.Fatal(name, err)
			}
			bending := named(t, checks, "bending")
			deflection := named(t, checks, "deflection under the passing load")
			most := math.Max(bending.Value/bending.Limit, deflection.Value/deflection.Limit)
			near(t, name, most, 1)
			if strings.Contains(c.Name, "bending") != (bending.Value/bending.Limit > deflection.Value/deflection.Limit) {
				t.Errorf("%s: %s, bending %g, deflection %g", name, c.Name, bending.Value/bending.Limit, deflection.Value/deflection.Limit)
			}
		}
	})
	if len(governs) != 2 {
		t.Errorf("only %v", governs)
	}
}

// TestSpanCheck: with a Length the check has a verdict, without it the limit
// alone.
func TestSpanCheck(t *testing.T) {
	m := piece(t, "spf", "2", "2x8")
	span, c, err := m.Span(0.4, 500, 2000)
	if err != nil || c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) || c.Limit != span {
		t.Errorf("%v, %v", c, err)
	}
	for length, want := range map[float64]measure.Verdict{span * 0.99: measure.Holds, span * 1.01: measure.Short} {
		m.Length = length
		_, c, err := m.Span(0.4, 500, 2000)
		if err != nil || c.Verdict() != want || len(c.Factors) == 0 {
			t.Errorf("%v, %v, want %v", c, err, want)
		}
		_, c, err = m.BeamSpan(2, 0, 500, 2000)
		if err != nil || c.Verdict() == measure.NoAnswer {
			t.Errorf("%v, %v", c, err)
		}
	}
}

// TestWideSpacing: three joists farther apart than 24 in. do not act together.
func TestWideSpacing(t *testing.T) {
	m := piece(t, "spf", "2", "2x8")
	for spacing, together := range map[float64]bool{24 * measure.Inch: true, 25 * measure.Inch: false} {
		m.Repetitive = false
		alone, _, err := m.SpanWithin(60, spacing, 500, 2000)
		if err != nil {
			t.Fatal(err)
		}
		m.Repetitive = true
		span, _, err := m.SpanWithin(60, spacing, 500, 2000)
		if err != nil {
			t.Fatal(err)
		}
		want := alone
		if together {
			want *= math.Sqrt(1.15)
		}
		near(t, "span", span, want)
	}
}

// TestOverhang: the tip under the force deflects a/180, or the overhang is a
// quarter of the span.
func TestOverhang(t *testing.T) {
	m := piece(t, "hf", "2", "2x8")
	ei := adjusted(t, m, lumber.TenYears).E.Value * m.Section.Inertia()
	seen := map[string]bool{}
	for back := 0.5; back < 6; back += 0.25 {
		a, c, err := m.Overhang(back, 1000, 0)
		if err != nil {
			t.Fatal(err)
		}
		seen[c.Name] = true
		if tip := 1000 * a * a * (back + a) / (3 * ei); tip > a/180*(1+1e-9) || a > back/4 {
			t.Errorf("span %g m: overhang %g m, tip %g m", back, a, tip)
		} else if math.Min(math.Abs(tip/(a/180)-1), math.Abs(a/(back/4)-1)) > 1e-9 {
			t.Errorf("span %g m: overhang %g m meets no limit", back, a)
		}
		less, _, err := m.Overhang(back, 1000, 1)
		if err != nil || less < 0 || less > a {
			t.Errorf("less 1 m: %g (%v)", less, err)
		}
	}
	if len(seen) != 2 {
		t.Errorf("only %v", seen)
	}
}

// TestBeamSpan: at the span one of bending, shear and deflection is at its limit;
// each of them governs somewhere.
func TestBeamSpan(t *testing.T) {
	const dead, live = 500.0, 2000.0
	governs := map[string]bool{}
	for _, size := range []string{"2x6", "2x12", "4x8"} {
		for _, plies := range []int{1, 2, 3} {
			for _, joist := range []float64{0.1, 0.5, 2, 5, 12, 25} {
				m := piece(t, "syp", "1", size)
				m.Plies = plies
				span, c, err := m.BeamSpan(joist, joist/5, dead, live)
				if err != nil {
					t.Fatal(err)
				}
				governs[c.Name] = true
				m.Held = true
				v := adjusted(t, m, lumber.TenYears)
				n := float64(plies)
				reach := 1.44 * joist / 2
				w := (dead + live) * reach
				near(t, c.Name, max(
					w*span*span/8/(n*m.Section.Modulus()*v.Fb.Value),
					1.5*w*span/2/(n*m.Section.Area()*v.Fv.Value),
					360*5*live*reach*math.Pow(span, 3)/(384*n*m.Section.Inertia()*v.E.Value),
				), 1)
			}
		}
	}
	if len(governs) != 3 {
		t.Errorf("only %v", governs)
	}
}

// TestBoards: the table, the rating before it, and no answer below an inch.
func TestBoards(t *testing.T) {
	const in = measure.Inch
	for _, c := range []struct {
		thick  float64
		rating float64
		slant  bool
		limit  float64
	}{
		{1, 0, false, 16},
		{1, 0, true, 12},
		{1.25, 0, false, 16},
		{1.5, 0, false, 24},
		{1.5, 0, true, 16},
		{1, 24, false, 24},
		{1, 12, true, 8},
		{1.5, 16, false, 16},
	} {
		b := lumber.Board{Section: lumber.Section{Width: c.thick * in, Depth: 5.5 * in}, Rating: c.rating * in, Slanted: c.slant}
		got, err := b.Check(c.limit*in - 1e-9)
		if err != nil || got.Verdict() != measure.Holds {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
		near(t, "limit", got.Limit, c.limit*in)
		if got, err = b.Check(c.limit*in + 1e-4); err != nil || got.Verdict() != measure.Short {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
	}
	for _, rating := range []float64{0, 0.4} {
		b := lumber.Board{Section: lumber.Section{Width: 5.5 * in, Depth: 0.99 * in}, Rating: rating}
		got, err := b.Check(0.3)
		if err != nil || got.Verdict() != measure.NoAnswer || !errors.Is(got.Err, measure.ErrRange) {
			t.Errorf("thin board: %v, %v", got, err)
		}
	}
}
