package arch

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"testing"
)

// Words that stand for a set of packages in a rule.
const (
	public  = "any public package"
	numeric = "any numeric package of internal" // special functions, tables, drawing, states of failure
)

const (
	gonum = "gonum.org/v1/gonum"
	cmp   = "github.com/google/go-cmp"
)

// A rule says what a package's own code may import beside the standard library.
type rule struct {
	of     string   // path in the module, or a path.Match pattern
	within []string // packages of this module: paths, public, numeric
	beside []string // other modules
}

// rules are the arrows of the architecture; the first that matches a package
// governs it. They run one way: measure is the leaf, dock gathers everything,
// sheet prints what dock found, examples stand outside.
var rules = []rule{
	{"lumber/measure", nil, []string{gonum}},
	{"internal/arch", nil, nil},
	{"internal/published", []string{public, numeric}, []string{gonum}},
	{"internal/hostile", []string{public}, []string{gonum}},
	{"internal/same", []string{public, numeric}, []string{gonum}},
	{"internal/again", []string{public, "internal/ulp"}, nil},
	{"internal/*", nil, []string{gonum}},

	{"float", []string{"lumber/measure", numeric}, []string{gonum}},
	{"float/moor", []string{"lumber/measure", numeric}, []string{gonum}},
	{"ice", []string{"lumber/measure", numeric}, []string{gonum}},
	{"ice/*", []string{"ice", "lumber/measure", numeric}, []string{gonum}},
	{"lumber", []string{"lumber/measure", numeric}, []string{gonum}},
	{"lumber/fasten", []string{"lumber", "lumber/measure", numeric}, []string{gonum}},

	{"frame", []string{"lumber", "lumber/measure", numeric}, []string{gonum}},
	{"frame/rack", []string{"lumber", "lumber/measure", numeric}, []string{gonum}},
	{"frame/layout", []string{"lumber", "lumber/measure", numeric}, []string{gonum}},
	{"frame/plan", []string{"lumber/measure"}, nil},
	{"frame/dock", []string{
		"float", "float/moor", "frame", "frame/layout", "frame/plan", "frame/rack",
		"ice", "ice/action", "ice/season", "lumber", "lumber/fasten", "lumber/measure", numeric,
	}, []string{gonum}},
	{"frame/sheet", []string{
		"float", "float/moor", "frame", "frame/dock", "frame/layout", "frame/plan", "frame/rack",
		"ice", "ice/action", "ice/season", "lumber", "lumber/fasten", "lumber/measure", numeric,
	}, []string{gonum}},

	// The handbook shows the proof of this library, so it alone reads the outside checks; no
	// reader has a use for it outside this module.
	{"examples/handbook", []string{public, "internal/published"}, nil},

	// A reader copies an example out, so it uses what a reader can import.
	{"examples/*", []string{public}, []string{gonum}},
}

// String returns the rule in words.
func (r rule) String() string {
	may := append(slices.Clone(r.within), r.beside...)
	if len(may) == 0 {
		may = []string{"nothing"}
	}
	return fmt.Sprintf("%s may import, beside the standard library: %s", r.of, strings.Join(may, ", "))
}

// ruleFor returns the rule that governs a package.
func ruleFor(rules []rule, rel string) (rule, bool) {
	for _, r := range rules {
		if ok, _ := path.Match(r.of, rel); ok {
			return r, true
		}
	}
	return rule{}, false
}

// inTests widens a rule for a package's own tests, which may measure errors and pin
// numbers; a test in the external test package may also use the table of outside
// checks. An example's tests get no more than the example itself, the comparing aside.
func (r rule) inTests(rel string, external bool) rule {
	r.within = append(slices.Clone(r.within), rel, "internal/pinned", "internal/ulp")
	r.beside = append(slices.Clone(r.beside), cmp)
	if external && !strings.HasPrefix(rel, "examples/") {
		r.within = slices.Compact(append(r.within, "internal/published"))
	}
	return r
}

// allows reports whether the rule lets a package import the given path.
func (r rule) allows(m *tree, imported string) bool {
	if rel, ok := strings.CutPrefix(imported, m.module+"/"); ok {
		return slices.ContainsFunc(r.within, func(to string) bool {
			switch to {
			case public:
				return m.isPublic(rel)
			case numeric:
				ok, _ := path.Match("internal/*", rel)
				return ok && rel != "internal/arch" && rel != "internal/published" && rel != "internal/hostile" && rel != "internal/same" && rel != "internal/again" && rel != "internal/ulp"
			}
			return to == rel
		})
	}
	if imported == "C" { // a machine that has only Go has no C compiler
		return false
	}
	if first, _, _ := strings.Cut(imported, "/"); !strings.Contains(first, ".") {
		return true // the standard library
	}
	return slices.ContainsFunc(r.beside, func(mod string) bool {
		return imported == mod || strings.HasPrefix(imported, mod+"/")
	})
}

// isPublic reports whether rel is a package that other modules may import.
func (m *tree) isPublic(rel string) bool {
	return slices.ContainsFunc(m.packages, func(p *pkg) bool { return p.rel == rel && p.public() })
}

// breaches returns one line per import that breaks a rule.
func breaches(m *tree, rules []rule) []string {
	var out []string
	for _, p := range m.packages {
		r, ok := ruleFor(rules, p.rel)
		if !ok {
			out = append(out, fmt.Sprintf("%s: no rule names this package: add one to rules", p.rel))
			continue
		}
		for _, set := range []struct {
			what    string
			imports []string
			rule    rule
		}{
			{"", p.Imports, r},
			{" (its tests)", p.TestImports, r.inTests(p.rel, false)},
			{" (its external tests)", p.XTestImports, r.inTests(p.rel, true)},
		} {
			for _, imported := range set.imports {
				if !set.rule.allows(m, imported) {
					out = append(out, fmt.Sprintf("%s%s imports %s; the rule: %s", p.rel, set.what, imported, set.rule))
				}
			}
		}
	}
	return out
}

func TestImportRules(t *testing.T) {
	for _, line := range breaches(module(t), rules) {
		t.Error(line)
	}
}

// TestImportRulesCatch proves on an invented module that each kind of breach is
// seen and that lawful imports are not.
func TestImportRulesCatch(t *testing.T) {
	const mod = "example.org/floewright"
	fake := func(rel, name string, imports, tests, xtests []string) *pkg {
		p := &pkg{rel: rel}
		p.ImportPath, p.Name = mod+"/"+rel, name
		p.Imports, p.TestImports, p.XTestImports = imports, tests, xtests
		return p
	}
	measure, published := mod+"/lumber/measure", mod+"/internal/published"
	lawful := []*pkg{
		fake("lumber/measure", "measure", []string{"math"}, []string{"testing", cmp + "/cmp"}, []string{measure, published}),
		fake("internal/published", "published", []string{measure, mod + "/float", mod + "/internal/root"}, nil, nil),
		fake("internal/root", "root", []string{"math", gonum + "/mat"}, nil, []string{mod + "/internal/root", published}),
		fake("float", "float", []string{measure, gonum + "/spatial/r3", mod + "/internal/root"}, nil, []string{mod + "/float", published, cmp + "/cmp"}),
		fake("examples/one", "main", []string{"fmt", mod + "/float"}, nil, nil),
		fake("examples/handbook", "main", []string{"fmt", measure, published}, []string{published}, nil),
	}
	if got := breaches(&tree{module: mod, packages: lawful}, rules); len(got) > 0 {
		t.Errorf("lawful imports reported: %q", got)
	}
	for _, c := range []struct {
		why string
		bad *pkg
	}{
		{"the leaf imports upward", fake("lumber/measure", "measure", []string{mod + "/float"}, nil, nil)},
		{"float imports a sibling", fake("float", "float", []string{mod + "/ice"}, nil, nil)},
		{"frame imports float", fake("frame", "frame", []string{mod + "/float"}, nil, nil)},
		{"moor imports float", fake("float/moor", "moor", []string{mod + "/float"}, nil, nil)},
		{"lumber imports fasten", fake("lumber", "lumber", []string{mod + "/lumber/fasten"}, nil, nil)},
		{"plan imports lumber", fake("frame/plan", "plan", []string{mod + "/lumber"}, nil, nil)},
		{"dock imports sheet", fake("frame/dock", "dock", []string{mod + "/frame/sheet"}, nil, nil)},
		{"an example imports internal", fake("examples/two", "main", []string{mod + "/internal/root"}, nil, nil)},
		{"another example imports the checks", fake("examples/two", "main", []string{published}, nil, nil)},
		{"an example's test imports internal", fake("examples/two", "main", nil, nil, []string{published})},
		{"an example imports an example", fake("examples/two", "main", []string{mod + "/examples/one"}, nil, nil)},
		{"the library imports the checks", fake("ice", "ice", []string{published}, nil, nil)},
		{"an internal test imports the checks", fake("ice", "ice", nil, []string{published}, nil)},
		{"the library imports go-cmp", fake("ice", "ice", []string{cmp + "/cmp"}, nil, nil)},
		{"a third module", fake("ice", "ice", []string{"example.com/other"}, nil, nil)},
		{"a module whose name only begins alike", fake("ice", "ice", []string{gonum + "x/mat"}, nil, nil)},
		{"C", fake("ice", "ice", []string{"C"}, nil, nil)},
		{"a package without a rule", fake("weather", "weather", nil, nil, nil)},
	} {
		got := breaches(&tree{module: mod, packages: append(slices.Clone(lawful), c.bad)}, rules)
		if len(got) != 1 || !strings.Contains(got[0], "rule") {
			t.Errorf("%s: want one breach that names its rule, got %q", c.why, got)
		}
	}
}
