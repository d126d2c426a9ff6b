package lumber_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestSpelling: what yards and stamps write finds the row of the table.
func TestSpelling(t *testing.T) {
	for _, c := range []struct {
		species, grade, size string
		wantSpecies, want    string
		fb                   float64
	}{
		{"southern pine", "No.2", "2x8", "Southern Pine", "No.2", 925},
		{"SYP", "#2", "2x12", "Southern Pine", "No.2", 750},
		{"sp", "no 2", "2x14", "Southern Pine", "No.2", 750},
		{"Southern Yellow Pine", "Number 2 Prime", "2 x 6", "Southern Pine", "No.2", 1000},
		{"S. pine", "2", "2x4", "", "", 0},
		{"doug fir", "No. 1 & better", "2x8", "Douglas Fir-Larch", "No.1 & Btr", 1200},
		{"D.Fir-L (N)", "1/2", "2x8", "Douglas Fir-Larch (North)", "No.2", 850},
		{"s-p-f", "Sel. Str.", "2×10", "Spruce-Pine-Fir", "Select Structural", 1250},
		{"SPF(s)", "std", "2x4", "Spruce-Pine-Fir (South)", "Standard", 500},
		{"hem fir", "stud", "2x6", "Hem-Fir", "Stud", 675},
		{"hem fir", "stud", "2x8", "Hem-Fir", "No.3", 500},
		{"syp", "stud", "2x8", "Southern Pine", "No.3 and Stud", 525},
		{"syp", "no3", "2x4", "Southern Pine", "No.3 and Stud", 650},
		{"spruce", "2&btr", "2x4", "", "", 0},
		{"northern white", "no2", "2x4", "Northern White Cedar", "No.2", 550},
		{"dfl", "2", "6x12", "Douglas Fir-Larch", "No.2", 875},
		{"dfl", "2", "6x8", "Douglas Fir-Larch", "No.2", 750},
		{"syp", "2", "6x6", "Southern Pine", "No.2", 850},
	} {
		s, err := lumber.Size(c.size)
		if err != nil {
			t.Fatal(err)
		}
		g, err := lumber.Lookup(c.species, c.grade, s)
		if c.want == "" {
			if !errors.Is(err, measure.ErrName) {
				t.Errorf("%q: %v, %v", c.species, g, err)
			}
			continue
		}
		if err != nil || g.Species != c.wantSpecies || g.Name != c.want || g.Fb.Printed != c.fb {
			t.Errorf("%s %s %s: %s %s %g, %v", c.species, c.grade, c.size, g.Species, g.Name, g.Fb.Printed, err)
		}
	}
}

// TestCandidates: the error lists what there is.
func TestCandidates(t *testing.T) {
	s, err := lumber.Size("2x8")
	if err != nil {
		t.Fatal(err)
	}
	post, err := lumber.Size("6x6")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		species, grade string
		s              lumber.Section
		want           string
	}{
		{"cedar", "2", s, "Western Cedars; Northern White Cedar"},
		{"hem fir", "standard", s, "Select Structural; No.1 & Btr; No.1; No.2; No.3 (Hem-Fir, 4A)"},
		{"western cedars", "2", post, "no values for Western Cedars of this size"},
	} {
		_, err := lumber.Lookup(c.species, c.grade, c.s)
		if !errors.Is(err, measure.ErrName) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %s: %v, want %q", c.species, c.grade, err, c.want)
		}
	}
}

// TestSizeNames: spellings, standing and lying, custom errors.
func TestSizeNames(t *testing.T) {
	edge, err := lumber.Size("2x8")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"2 x 8", "2×8", "2X8", `2"x8"`, " 2*8 ", "2 by 8"} {
		if got, err := lumber.Size(name); got != edge || err != nil {
			t.Errorf("%q: %v, %v", name, got, err)
		}
	}
	if flat, err := lumber.Size("8x2"); err != nil || flat != edge.Turned() {
		t.Errorf("8x2: %v, %v", flat, err)
	}
	if s, err := lumber.Size("2-1/2x4"); err != nil || s.Width != 2*measure.Inch {
		t.Errorf("2-1/2x4: %v, %v", s, err)
	}
	for n, dry := range map[string]float64{"5x5": 4.5, "7x7": 6.25, "15x15": 14.25, "16x16": 15, "24x24": 23} {
		if s, err := lumber.Size(n); err != nil || s.Width != dry*measure.Inch {
			t.Errorf("%s: %v, %v", n, s, err)
		}
	}
	for _, name := range []string{"", "2", "2x7", "2x8x12", "0x8", "-2x4", "1/0x4", "2-xx4", "5-4x6", "NaNx4", "Infx4", "25x25", "5.5x6", "38x140"} {
		s, err := lumber.Size(name)
		if !errors.Is(err, measure.ErrName) || s != (lumber.Section{}) || !strings.Contains(err.Error(), "5/4") {
			t.Errorf("%q: %v, %v", name, s, err)
		}
	}
}

// TestStamps reads stamps in the order they come.
func TestStamps(t *testing.T) {
	for text, want := range map[string]lumber.Stamp{
		"":                              {},
		"S-P-F No.2 KD-HT":              {Species: "Spruce-Pine-Fir", Grade: "No.2", Moisture: "dry"},
		"12 SYP #2 Prime KD19":          {Species: "Southern Pine", Grade: "No.2", Moisture: "dry"},
		"D FIR (N) 2&BTR S-GRN 1234":    {Species: "Douglas Fir-Larch (North)", Grade: "No.2", Moisture: "green"},
		"SPF 1/2 S-DRY":                 {Species: "Spruce-Pine-Fir", Grade: "No.2", Moisture: "dry"},
		"No. 1/No. 3 HEM-FIR":           {Species: "Hem-Fir", Grade: "No.3"},
		"STAND HEM-FIR 1":               {Species: "Hem-Fir", Grade: "Standard"},
		"2 HF":                          {Species: "Hem-Fir", Grade: "No.2"},
		"No.1 Dense S.P.":               {Species: "Southern Pine", Grade: "No.1 Dense"},
		"spruce pine fir (south), stud": {Species: "Spruce-Pine-Fir (South)", Grade: "Stud"},
		"ground contact":                {Use: "UC4A"},
		"uc 4b incised ground contact":  {Use: "UC4B", Incised: true},
	} {
		got, err := lumber.ReadStamp(text)
		if err != nil || got != want {
			t.Errorf("%q: %+v, %v, want %+v", text, got, err, want)
		}
	}
	for _, text := range []string{"HF SPF No.2", strings.Repeat("x", 201)} {
		if got, err := lumber.ReadStamp(text); !errors.Is(err, measure.ErrSyntax) || got != (lumber.Stamp{}) {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
}

// TestStampLookup: what a stamp does not say counts as the worst it may be.
func TestStampLookup(t *testing.T) {
	at := func(stamp lumber.Stamp, size string, yard ...string) float64 {
		s, err := lumber.Size(size)
		if err != nil {
			t.Fatal(err)
		}
		g, err := stamp.Lookup(s, yard...)
		if err != nil {
			t.Fatal(stamp, size, err)
		}
		m := lumber.Member{Section: s, Grade: g, Held: true}
		return adjusted(t, m, lumber.TenYears).Fb.Value / measure.PSI
	}
	yard := []string{"spf", "hf"}
	for _, size := range []string{"2x3", "2x4", "2x8", "6x6"} {
		known := at(lumber.Stamp{Species: "Hem-Fir", Grade: "No.2"}, size)
		species := at(lumber.Stamp{Species: "Hem-Fir"}, size)
		grade := at(lumber.Stamp{Grade: "No.2"}, size, yard...)
		neither := at(lumber.Stamp{}, size, yard...)
		any := at(lumber.Stamp{}, size)
		if !(species <= known && grade <= known && neither <= species && neither <= grade && any <= neither) {
			t.Errorf("%s: Fb' %g; species alone %g, grade alone %g, neither %g, no yard %g", size, known, species, grade, neither, any)
		}
	}
	// Utility's own size factor below 4 in. and the mixture's above.
	near(t, "2x3", at(lumber.Stamp{Species: "Hem-Fir"}, "2x3"), 250*0.4*0.8)
	near(t, "2x4", at(lumber.Stamp{Species: "Hem-Fir"}, "2x4"), 250*0.85*0.8)
	near(t, "2x8", at(lumber.Stamp{Species: "Hem-Fir"}, "2x8"), 500*1.2*0.8)
	if got := at(lumber.Stamp{Species: "rwo"}, "2x4"); got <= 0 { // no Utility listed
		t.Errorf("open grain redwood: %g", got)
	}
}

// TestOwnGrade: a user's values get no size factor above 1.
func TestOwnGrade(t *testing.T) {
	m := piece(t, "spf", "2", "2x4")
	m.Held, m.Dry, m.Smooth = true, true, true
	m.Grade = lumber.Grade{Species: "larch of the farm", Name: "as tested", Fb: lumber.Value{Printed: 8, Unit: measure.Megapascal}}
	v := adjusted(t, m, lumber.TenYears)
	near(t, "Fb'", v.Fb.Value, 8e6)
	if !errors.Is(v.E.Err, measure.ErrUnknown) {
		t.Errorf("E was not given: %v", v.E)
	}
	m.Section.Depth = 13.25 * measure.Inch
	near(t, "Fb' of a wide one", adjusted(t, m, lumber.TenYears).Fb.Value, 0.9*8e6)
}
