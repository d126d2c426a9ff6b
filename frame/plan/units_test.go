package plan_test

import (
	"io"
	"regexp"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

var (
	ends    = regexp.MustCompile(`from (-?[0-9].*) to (-?[0-9].*)$`)
	foreign = map[measure.System]*regexp.Regexp{
		measure.US: regexp.MustCompile(`\d (mm|m|km|kg|N|kN|Pa|kPa|MPa|N/m|L|m2|m²|m/s|C|°C)\b`),
		measure.SI: regexp.MustCompile(`\d (ft|in|lb|lbf|psf|plf|mph|gal|F|°F|ft/s)\b`),
	}
	quotation = regexp.MustCompile(`"[^"]*"|1 in [0-9.]+`) // and slopes
)

// What is explained in one system of units says the same in the other, to within the
// rounding, accepts what it names, and has no unit of the other left outside of quoted
// examples and sizes.
func TestEntriesIn(t *testing.T) {
	kinds := map[string]measure.Kind{}
	for k := measure.Length; k <= measure.Percent; k++ {
		kinds[k.String()] = k
	}
	spans := 0
	for _, e := range plan.Explain() {
		var at [2][2]float64
		for _, s := range []measure.System{measure.US, measure.SI} {
			in := e.In(s)
			if bad := foreign[s].FindString(quotation.ReplaceAllString(in.Means+" "+in.Accepts, "")); bad != "" {
				t.Errorf("%s in system %d: %q in %q", e.Path, s, bad, in.String())
			}
			m := ends.FindStringSubmatch(in.Accepts)
			_, what, _ := strings.Cut(strings.ReplaceAll(" "+in.Accepts[:max(0, strings.LastIndex(in.Accepts, " from "))], " an ", " a "), " a ")
			if i := strings.LastIndex(what, "a "); i >= 0 {
				what = what[i+2:]
			}
			kind, ok := kinds[what]
			if m == nil || !ok {
				continue
			}
			spans++
			for i := range at[s] {
				x, err := kind.Parse(m[i+1])
				if err != nil {
					t.Errorf("%s: %v", e.Path, err)
				}
				at[s][i] = x
			}
			if d := in.Default; d != "" {
				x, err := kind.Parse(d)
				if err != nil || x < at[s][0]-1e-9 || x > at[s][1]+1e-9 {
					t.Errorf("%s: %q is no %s within %v: %v", e.Path, d, kind, at[s], err)
				}
				if bad := foreign[s].FindString(d); bad != "" {
					t.Errorf("%s: default %q", e.Path, d)
				}
			}
		}
		for i := range 2 {
			a, b := at[0][i], at[1][i]
			if diff := a - b; diff > 0.3 && diff > 0.02*max(a, -a, b, -b) && a != b || -diff > 0.3 && -diff > 0.1*max(a, -a, b, -b) {
				t.Errorf("%s: ends at %g and %g", e.Path, a, b)
			}
		}
	}
	if spans < 300 {
		t.Errorf("only %d spans were read", spans)
	}
}

// A mistake is told in the plan's own units, and the ends that it names are accepted.
func TestMistakesInUnits(t *testing.T) {
	r, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	all, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	swim := string(all)
	for _, c := range []struct{ units, value, want string }{
		{"us", "900 psf", "from 4.18 psf to 208 psf"},
		{"si", "900 psf", "from 0.2 kPa to 10 kPa"},
		{"us", "9 feet", "from 4.18 psf to 208 psf"},
	} {
		text := func(v string) string {
			return strings.Replace(strings.Replace(swim, `"units": "us"`, `"units": "`+c.units+`"`, 1), `"deck": "40 psf"`, `"deck": "`+v+`"`, 1)
		}
		_, err := plan.Read("f", strings.NewReader(text(c.value)))
		if err == nil || c.value != "9 feet" && !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), c.value) {
			t.Errorf("%s, %s: %v", c.units, c.value, err)
		}
		m := ends.FindStringSubmatch(c.want)
		for _, end := range m[1:] {
			if _, err := plan.Read("f", strings.NewReader(text(end))); err != nil {
				t.Errorf("%s is not accepted: %v", end, err)
			}
		}
	}
	_, err = plan.Read("f", strings.NewReader(strings.Replace(swim, `"deck": "40 psf"`, `"deck": 40`, 1)))
	if err == nil || !strings.Contains(err.Error(), "from 4.18 psf to 208 psf, in quotes") {
		t.Errorf("%v", err)
	}
}

// An angle is no "a angle".
func TestExplainArticles(t *testing.T) {
	for _, e := range plan.Explain() {
		for _, vowel := range "aeio" { // "a unit" is right
			if text := e.In(measure.SI).String(); strings.Contains(text, " a "+string(vowel)) {
				t.Errorf("%s: %s", e.Path, text)
			}
		}
	}
}
