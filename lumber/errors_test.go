package lumber_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestBadNumbers gives every number an entry takes what no number may be.
func TestBadNumbers(t *testing.T) {
	m := checked(t)
	s := m.Section
	b := lumber.Board{Section: s}
	w, err := m.Weights()
	if err != nil {
		t.Fatal(err)
	}
	factor := func(_ measure.Factor, err error) error { return err }
	number := func(_ float64, err error) error { return err }
	span := func(_ float64, _ measure.Check, err error) error { return err }
	check := func(_ measure.Check, err error) error { return err }
	checks := func(_ []measure.Check, err error) error { return err }
	demand := func(set func(*lumber.Demand, float64)) func(float64) error {
		return func(x float64) error {
			d := lumber.Demand{Shear: 1, Reaction: 1, Bearing: 1}
			set(&d, x)
			return checks(m.Check(d, lumber.TenYears))
		}
	}
	member := func(set func(*lumber.Member, float64)) func(float64) error {
		return func(x float64) error {
			m := m
			set(&m, x)
			_, err := m.Adjusted(lumber.TenYears)
			for _, other := range []error{
				checks(m.Check(lumber.Demand{}, lumber.TenYears)),
				checks(m.CheckNotch(lumber.Notch{Depth: 0.01}, 1, lumber.TenYears)),
				check(m.CheckJoint(0.1, 1, 1, lumber.TenYears)),
				span(m.Span(0.4, 500, 2000)),
				span(m.Overhang(2, 1000, 0)),
				span(m.BeamSpan(2, 0, 500, 2000)),
			} {
				if other == nil && err != nil {
					t.Errorf("%g: %v, yet %v", x, err, other)
				}
			}
			return err
		}
	}
	for name, call := range map[string]func(float64) error{
		"Width": func(x float64) error { return lumberSection(x, 0.1) },
		"Depth": func(x float64) error { return lumberSection(0.1, x) },
		"board": func(x float64) error {
			return check(lumber.Board{Section: lumber.Section{Width: x, Depth: 0.1}}.Check(0.3))
		},
		"spacing":  func(x float64) error { return check(b.Check(x)) },
		"feet":     func(x float64) error { return number(lumber.BoardFeet("2x8", x)) },
		"le":       func(x float64) error { return number(lumber.EffectiveLength("", x, 0.1)) },
		"le depth": func(x float64) error { return number(lumber.EffectiveLength("", 1, x)) },
		"CL Fb*":   func(x float64) error { return factor(lumber.BeamStability(x, 1e9, 1, 0.2, 0.04)) },
		"CL Emin":  func(x float64) error { return factor(lumber.BeamStability(1e7, x, 1, 0.2, 0.04)) },
		"CL le":    func(x float64) error { return factor(lumber.BeamStability(1e7, 1e9, x, 0.2, 0.04)) },
		"CL depth": func(x float64) error { return factor(lumber.BeamStability(1e7, 1e9, 1, x, 0.04)) },
		"CL width": func(x float64) error { return factor(lumber.BeamStability(1e7, 1e9, 1, 0.2, x)) },
		"CP Fc*":   func(x float64) error { return factor(lumber.ColumnStability(x, 1e9, 10)) },
		"CP Emin":  func(x float64) error { return factor(lumber.ColumnStability(1e7, x, 10)) },
		"CP le/d":  func(x float64) error { return factor(lumber.ColumnStability(1e7, 1e9, x)) },
		"Cb":       func(x float64) error { return factor(lumber.BearingArea(x, true)) },
		"G": func(x float64) error {
			_, _, err := lumber.PoreFull(x)
			if number(lumber.Density(x, 0.19)) == nil {
				return nil
			}
			return err
		},
		"under E":        func(x float64) error { _, _, err := b.Under(1, 0.4, 1, false, x); return err },
		"under spacing":  func(x float64) error { _, _, err := b.Under(1, x, 1, false, 1e10); return err },
		"under board":    func(x float64) error { _, _, err := lumber.Board{}.Under(1, 0.4, 1, false, x); return err },
		"gap width":      func(x float64) error { return number(lumber.Gap(x, 0.30, 0, 0.15)) },
		"hole":           func(x float64) error { return number(lumber.HoleArea(x, 0.04)) },
		"hole thickness": func(x float64) error { return number(lumber.HoleArea(0.01, x)) },
		"weighed":        func(x float64) error { _, err := w.Weighed(x); return err },
		"weight length": func(x float64) error {
			m := m
			m.Length = x
			_, err := m.Weights()
			return err
		},
		"weight section": func(x float64) error {
			m := m
			m.Section.Width = x
			_, err := m.Weights()
			return err
		},
		"weight G": func(x float64) error {
			m := m
			m.Grade.G.Printed = x
			_, err := m.Weights()
			return err
		},
		"weight heavy": func(x float64) error {
			m := m
			m.Grade.Heavy = lumber.Value{Printed: x * math.Inf(1), Unit: 1}
			m.Grade.G = lumber.Value{}
			_, err := m.Weights()
			return err
		},
		"joist spacing": func(x float64) error { return span(m.Span(x, 500, 2000)) },
		"live load":     func(x float64) error { return span(m.Span(0.4, 500, x)) },
		"beam live":     func(x float64) error { return span(m.BeamSpan(2, 0.1, 500, x)) },
		"beam joist":    func(x float64) error { return span(m.BeamSpan(x, 0, 500, 2000)) },
		"fraction":      func(x float64) error { return span(m.SpanWithin(x, 0.4, 500, 2000)) },
		"back span":     func(x float64) error { return span(m.Overhang(x, 1000, 0)) },
		"tip force":     func(x float64) error { return span(m.Overhang(2, x, 0)) },
		"notch":         func(x float64) error { return checks(m.CheckNotch(lumber.Notch{Depth: x}, 1, lumber.TenYears)) },
		"joint depth":   func(x float64) error { return check(m.CheckJoint(x, 1, 1, lumber.TenYears)) },
		"relief depth":  func(x float64) error { return number(lumber.ShearRelief(x, 1, 1, 1)) },
		"section": func(x float64) error {
			_, err := lumber.Weakest("2", lumber.Section{Width: x, Depth: 0.2})
			return err
		},
		"member width": member(func(m *lumber.Member, x float64) { m.Section.Width = x }),
	} {
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0} {
			wantBad(t, name, x, call(x))
		}
	}
	// These may be zero.
	for name, call := range map[string]func(float64) error{
		"Unbraced":      member(func(m *lumber.Member, x float64) { m.Unbraced = x }),
		"Length":        member(func(m *lumber.Member, x float64) { m.Length = x }),
		"Fb":            member(func(m *lumber.Member, x float64) { m.Grade.Fb.Printed = x * 1e-9; m.Grade.Fb.Unit = 1 }),
		"Widest":        member(func(m *lumber.Member, x float64) { m.Grade.Widest = x }),
		"Emin":          member(func(m *lumber.Member, x float64) { m.Grade.Emin.Printed = x }),
		"Bearing":       demand(func(d *lumber.Demand, x float64) { d.Bearing = x }),
		"Relief":        demand(func(d *lumber.Demand, x float64) { d.Relief = x }),
		"Span":          demand(func(d *lumber.Demand, x float64) { d.Span = x }),
		"dead load":     func(x float64) error { return span(m.Span(0.4, x, 2000)) },
		"beam dead":     func(x float64) error { return span(m.BeamSpan(2, 0, x, 2000)) },
		"beam overhang": func(x float64) error { return span(m.BeamSpan(2, x, 500, 2000)) },
		"less":          func(x float64) error { return span(m.Overhang(2, 1000, x)) },
		"notch length": func(x float64) error {
			return checks(m.CheckNotch(lumber.Notch{Depth: 0.01, Length: x}, 1, lumber.TenYears))
		},
		"notch from": func(x float64) error {
			return checks(m.CheckNotch(lumber.Notch{Depth: 0.01, From: x}, 1, lumber.TenYears))
		},
		"joint end":      func(x float64) error { return check(m.CheckJoint(0.1, x, 1, lumber.TenYears)) },
		"relief uniform": func(x float64) error { return number(lumber.ShearRelief(0.2, x, 1, 1)) },
		"relief force":   func(x float64) error { return number(lumber.ShearRelief(0.2, 1, x, 1)) },
		"relief at":      func(x float64) error { return number(lumber.ShearRelief(0.2, 1, 1, x)) },
		"gap":            func(x float64) error { return number(lumber.Gap(0.1, 0.30, x, 0.15)) },
		"rating":         func(x float64) error { return check(lumber.Board{Section: s, Rating: x}.Check(0.3)) },
		"under force":    func(x float64) error { _, _, err := b.Under(x, 0.4, 1, false, 1e10); return err },
		"area":           func(x float64) error { _, err := lumber.FieldTreatment(x); return err },
		"moisture":       func(x float64) error { return number(lumber.Density(0.5, x)) },
		"plies": func(x float64) error {
			return factor(lumber.RepetitiveMember(s, false, int(math.Max(-9, math.Min(9, x)))))
		},
	} {
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1} {
			if name == "plies" && math.IsNaN(x) {
				continue
			}
			wantBad(t, name, x, call(x))
		}
		if err := call(0); err != nil {
			t.Errorf("%s 0: %v", name, err)
		}
	}
	// These may have any sign.
	for name, call := range map[string]func(float64) error{
		"Moment":      demand(func(d *lumber.Demand, x float64) { d.Moment = x }),
		"FlatMoment":  demand(func(d *lumber.Demand, x float64) { d.FlatMoment = x }),
		"Shear":       demand(func(d *lumber.Demand, x float64) { d.Shear = x }),
		"Axial":       demand(func(d *lumber.Demand, x float64) { d.Axial = x }),
		"Reaction":    demand(func(d *lumber.Demand, x float64) { d.Reaction = x }),
		"Long":        demand(func(d *lumber.Demand, x float64) { d.Long = x }),
		"Short":       demand(func(d *lumber.Demand, x float64) { d.Short = x }),
		"notch shear": func(x float64) error { return checks(m.CheckNotch(lumber.Notch{Depth: 0.01}, x, lumber.TenYears)) },
		"joint shear": func(x float64) error { return check(m.CheckJoint(0.1, 1, x, lumber.TenYears)) },
		"temperature": func(x float64) error { return factor(lumber.Temperature(lumber.Fb, x, false)) },
		"hot member":  member(func(m *lumber.Member, x float64) { m.Temperature = x }),
	} {
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			wantBad(t, name, x, call(x))
		}
		if err := call(-1); err != nil {
			t.Errorf("%s -1: %v", name, err)
		}
	}
	for _, moisture := range []float64{math.NaN(), math.Inf(1), -0.01, 0.25, 8, 15, 19, 30} {
		_, _, err := lumber.Shrinkage(moisture)
		wantBad(t, "Shrinkage", moisture, err)
		_, err = lumber.Gap(0.1, 0.15, 0, moisture)
		wantBad(t, "Gap", moisture, err)
	}
	for _, celsius := range []float64{66, -61} {
		wantBad(t, "Temperature", celsius, factor(lumber.Temperature(lumber.E, celsius, true)))
	}
}

// lumberSection asks every entry that takes a section.
func lumberSection(width, depth float64) error {
	s := lumber.Section{Width: width, Depth: depth}
	_, err := lumber.Lookup("spf", "2", s)
	for _, f := range []func() (measure.Factor, error){
		func() (measure.Factor, error) { return lumber.WetService(lumber.Fb, lumber.Grade{}, s, false) },
		func() (measure.Factor, error) { return lumber.SizeFactor(lumber.Fb, lumber.Grade{}, s) },
		func() (measure.Factor, error) { return lumber.FlatUse(lumber.Fb, lumber.Grade{}, s) },
		func() (measure.Factor, error) { return lumber.RepetitiveMember(s, false, 1) },
	} {
		if _, other := f(); other == nil {
			return nil
		}
	}
	if _, other := (lumber.Stamp{}).Lookup(s); other == nil {
		return nil
	}
	return err
}

func wantBad(t *testing.T, name string, x float64, err error) {
	t.Helper()
	var e *measure.Error
	if !errors.As(err, &e) || !errors.Is(err, measure.ErrRange) || e.Field == "" {
		t.Errorf("%s %g: %v, want out of range", name, x, err)
	}
}

// TestBadNames gives names, choices and combinations that there are not.
func TestBadNames(t *testing.T) {
	m := checked(t)
	s := m.Section
	const none = lumber.Property(99)
	bad := lumber.Duration(-1)
	for name, f := range map[string]func() error{
		"Duration": func() error { _, err := bad.Factor(lumber.Fb); return err },
		"CD":       func() error { _, err := lumber.Snow.Factor(none); return err },
		"CM":       func() error { _, err := lumber.WetService(none, m.Grade, s, false); return err },
		"Ct":       func() error { _, err := lumber.Temperature(none, 0, false); return err },
		"CF":       func() error { _, err := lumber.SizeFactor(-1, m.Grade, s); return err },
		"Cfu":      func() error { _, err := lumber.FlatUse(none, m.Grade, s); return err },
		"Ci":       func() error { _, err := lumber.Incising(none, false); return err },
		"Adjusted": func() error { _, err := m.Adjusted(bad); return err },
		"Check":    func() error { _, err := m.Check(lumber.Demand{}, bad); return err },
		"le":       func() error { _, err := lumber.EffectiveLength("two elephants", 1, 0.1); return err },
		"Loading":  func() error { m := m; m.Loading = "two elephants"; _, err := m.Adjusted(0); return err },
		"feet":     func() error { _, err := lumber.BoardFeet("3x3x3", 1); return err },
		"green":    func() error { _, err := lumber.GreenSize("big"); return err },
		"Weakest":  func() error { _, err := lumber.Weakest("2", s, "spf", "oak"); return err },
		"nothing":  func() error { _, err := lumber.Weakest("superb", s); return err },
		"a post's grade on a joist": func() error {
			m := m
			m.Grade = piece(t, "spf", "2", "6x6").Grade
			_, err := m.Adjusted(0)
			return err
		},
		"a joist's grade on a post": func() error {
			p := piece(t, "spf", "2", "6x6")
			p.Grade = m.Grade
			_, err := p.Adjusted(0)
			return err
		},
		"a post's grade on a stringer": func() error {
			p := piece(t, "dfl", "2", "6x12")
			p.Grade = piece(t, "dfl", "2", "6x6").Grade
			_, err := p.Adjusted(0)
			return err
		},
		"a stringer's grade on a post": func() error {
			p := piece(t, "dfl", "2", "6x6")
			p.Grade = piece(t, "dfl", "2", "6x12").Grade
			_, err := p.Adjusted(0)
			return err
		},
		"a joist's grade on a board": func() error {
			b := piece(t, "spf", "2", "5/4x6")
			b.Grade = m.Grade
			_, err := b.Adjusted(0)
			return err
		},
	} {
		if err := f(); !errors.Is(err, measure.ErrName) {
			t.Errorf("%s: %v, want an unknown name", name, err)
		}
	}
	narrow := piece(t, "syp", "2", "2x12")
	narrow.Grade = piece(t, "syp", "2", "2x6").Grade
	if _, err := narrow.Adjusted(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a 2x6's values on a 2x12: %v", err)
	}
	m.Plies = 7
	if _, err := m.Adjusted(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("7 plies: %v", err)
	}
	if _, err := m.Weights(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("7 plies: %v", err)
	}
	for _, c := range []struct {
		spans int
		inner bool
	}{{0, false}, {4, false}, {1, true}, {2, true}} {
		if _, _, err := (lumber.Board{Section: s}).Under(1, 0.4, c.spans, c.inner, 1e10); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%d spans: %v", c.spans, err)
		}
	}
	if got := none.String() + bad.String() + lumber.FcPerp.String() + lumber.Snow.String(); got != "no propertyno durationFc⊥snow, two months" {
		t.Errorf("%q", got)
	}
	// Boards have no strength to span with.
	deck := piece(t, "syp", "any", "5/4x6")
	for what, err := range map[string]error{
		"span":     func() error { _, _, err := deck.Span(0.4, 1, 1); return err }(),
		"beam":     func() error { _, _, err := deck.BeamSpan(2, 0, 1, 1); return err }(),
		"overhang": func() error { _, _, err := deck.Overhang(1, 1, 0); return err }(),
	} {
		if !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%s of a board: %v", what, err)
		}
	}
}
