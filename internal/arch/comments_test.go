package arch

import (
	"go/ast"
	"go/token"
	"go/types"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Reasons for which an exported function that gives numbers need name no source.
const (
	reads = "reads or builds what the caller wrote; nothing is computed that has an author"
)

// unsourced lists the exported functions and methods that give numbers and name no source,
// with the reason. A name that needs no excuse, or is gone, has to leave it.
var unsourced = map[string]string{
	"frame/dock.Build":            reads,
	"frame/dock.Read":             reads,
	"frame/dock.Dock.WithWinters": reads,
	"frame/plan.Plan.Vary":        reads,
	"frame/plan.Read":             reads,
	"ice/season.ReadCSV":          reads,
	"ice/season.New":              reads,
	"lumber/measure.Kind.Parse":   reads,
}

// paper are the types that hold text: their numbers are sizes on a page.
var paper = regexp.MustCompile(`/frame/sheet\.(Picture|Table|Document|Drawn)$`)

// unitWords are the units and the words for bare numbers that a comment may name.
var unitWords = strings.Fields(`m m² m³ m⁴ kg N Pa J W K s s² h d rad Hz °C °F % °
	metre metres meter millimetres newton newtons pascal pascals kilogram kilograms joule joules second seconds
	hours days day degrees radians percent psi psf lbf lb ft ft² in. inches
	currency cents ratio ratios share fraction fractions dimensionless chance chances coefficient coefficients a-number SI-unit`)

// units returns how often a comment names a unit, as a whole word and where a unit stands: a
// letter alone is one at the beginning, after a comma, a bracket, a number or a small word, so
// that the m of a formula is none. Indented lines hold formulas, and are left out.
func units(comment string) int {
	n := 0
	for _, text := range prose(comment) {
		text = strings.NewReplacer("(", " ( ", ")", " ) ", "[", " ", "]", " ", "SI unit", "SI-unit", "a number", "a-number").Replace(oneLine(text))
		before := ","
		for _, word := range strings.Fields(text) {
			bare := strings.TrimRight(word, ".,;:")
			if word == "in." {
				bare = word
			}
			if unit(bare, before) {
				n++
			}
			before = word
		}
	}
	return n
}

// prose returns the paragraphs of a comment without its indented lines.
func prose(comment string) []string {
	var out []string
	var now strings.Builder
	for line := range strings.Lines(comment + "\n\n") {
		switch {
		case strings.HasPrefix(line, "\t"):
		case strings.TrimSpace(line) == "":
			if now.Len() > 0 {
				out = append(out, now.String())
			}
			now.Reset()
		default:
			now.WriteString(line)
		}
	}
	return out
}

// small are the words after which a letter alone is a unit.
var small = []string{"in", "per", "of", "a", "(", "or", "and", "SI", "each", "by", "to", "first", "both"}

// unit reports whether a word is a unit, given the word before it.
func unit(word, before string) bool {
	parts := strings.FieldsFunc(word, func(r rune) bool { return r == '/' || r == '·' || r == '√' })
	for i, p := range parts {
		if i > 0 && p == "1" || p == "1" && len(parts) > 1 {
			continue
		}
		if !slices.Contains(unitWords, strings.Trim(p, "()")) {
			return false
		}
	}
	if len(parts) == 0 {
		return false
	}
	end := before[len(before)-1]
	switch {
	case word == "in.": // inches, where no sentence ends
		return '0' <= end && end <= '9'
	case len([]rune(word)) > 1:
		return word != "day" // 3 °C·day is one, a day of the calendar is none
	}
	return strings.ContainsRune(",;:", rune(end)) || '0' <= end && end <= '9' || slices.Contains(small, before) ||
		len(before) == 1 && word == "N"
}

// named matches what a comment may give as the ground of a number: a work with its year or a
// standard by its letters; an author by name; a science, a definition, or a choice of ours; a
// source that the data carry.
var named = regexp.MustCompile(`\p{Lu}[\p{L}.]+,?( \w+,)? (1[89]|20)\d\d\b` +
	`|\b(NDS|PS 20|IRC|DCA|UFC|ASCE|ISO \d|EN \d|TM 5|TR 12|NAVFAC|NAVEDTRA|FPL|WMO|EOS-80|CIRIA|PIANC|NIOSH|FAO|CEATI|SINTEF|NVE|AISC|SPM|CEM|CFR|Wood Handbook|Coastal Engineering Manual)\b` +
	`|\b(Archimedes|Timoshenko|Westergaard|Saint-Venant|St Venant|Bernoulli|Brahmagupta|Gauss|Stefan|Ashton|Sinha|Magnus|Maruo|Miche|Kalman|Student|Korotkin|Gomory|Frederking|Gold|Nevel|Steiner|Huygens|Betti|Maxwell|Airy|Kelvin|Hertz|Barrass)\b` +
	`|(?i)\b(definition|exact|equilibrium|statics|hydrostatics|geometry|trigonometry|by the lever|theorem|law of cosines|(beam|plate|linear|thin-plate) theory|potential energy|common practice|our choice|rule of the trade|from memory|no published|no source)\b` +
	`|\b(sources?|sourced|as printed)\b`)

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// A commented is what the tests of comments know of one package.
type commented struct {
	*pkg
	typed *types.Package
	funcs map[string]*ast.FuncDecl // "T.M" or "F"
	docs  map[string]string        // of types
}

func comment(p *pkg, typed *types.Package) *commented {
	c := &commented{p, typed, map[string]*ast.FuncDecl{}, map[string]string{}}
	for _, f := range p.code {
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if reachable(d) {
					c.funcs[strings.TrimPrefix(receiver(d)+"."+d.Name.Name, ".")] = d
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					if s, ok := s.(*ast.TypeSpec); ok {
						c.docs[s.Name.Name] = s.Doc.Text() + "\n\n" + s.Comment.Text()
						if !d.Lparen.IsValid() {
							c.docs[s.Name.Name] += "\n\n" + d.Doc.Text()
						}
					}
				}
			}
		}
	}
	return c
}

// signature returns the types of a function's parameters and results.
func (c *commented) signature(name string) *types.Signature {
	recv, method, ok := strings.Cut(name, ".")
	if !ok {
		return c.typed.Scope().Lookup(name).Type().(*types.Signature)
	}
	obj, _, _ := types.LookupFieldOrMethod(c.typed.Scope().Lookup(recv).Type(), true, c.typed, method)
	return obj.Type().(*types.Signature)
}

// bare reports whether a type holds numbers that no field of this module explains: floats,
// lists of them, functions of them, vectors of other modules.
func (c *commented) bare(t types.Type) bool {
	switch t := types.Unalias(t).(type) {
	case *types.Named:
		if t.Obj().Pkg() == nil || strings.HasPrefix(t.Obj().Pkg().Path(), c.home()) {
			return false
		}
		return gives(t, map[types.Type]bool{}) && t.Obj().Pkg().Path() != "time"
	case *types.Basic:
		return t.Info()&types.IsFloat != 0
	case *types.Pointer:
		return c.bare(t.Elem())
	case *types.Slice:
		return c.bare(t.Elem())
	case *types.Array:
		return c.bare(t.Elem())
	case *types.Map:
		return c.bare(t.Key()) || c.bare(t.Elem())
	case *types.Signature:
		return c.bare(t.Params()) || c.bare(t.Results())
	case *types.Tuple:
		for v := range t.Variables() {
			if c.bare(v.Type()) {
				return true
			}
		}
	}
	return false
}

// home is the path of the module.
func (c *commented) home() string { return strings.TrimSuffix(c.typed.Path(), c.rel) }

// groups returns how many groups of parameters and of results are bare numbers: a, b float64
// is one.
func (c *commented) groups(list *ast.FieldList, tuple *types.Tuple) int {
	n, at := 0, 0
	if list == nil {
		return 0
	}
	for _, f := range list.List {
		if c.bare(tuple.At(at).Type()) {
			n++
		}
		at += max(1, len(f.Names))
	}
	return n
}

// unitless returns one line per function, method, field and type of numbers whose comment
// names fewer units than it has groups of bare numbers.
func (c *commented) unitless() []string {
	var out []string
	say := func(pos token.Pos, what string) {
		out = append(out, c.fset.Position(pos).String()+": "+what+" names no unit")
	}
	for name, d := range c.funcs {
		s := c.signature(name)
		want := c.groups(d.Type.Params, s.Params()) + c.groups(d.Type.Results, s.Results())
		if got := units(d.Doc.Text()); got < want {
			say(d.Pos(), name)
		}
	}
	for _, f := range c.code {
		for _, d := range f.Decls {
			d, ok := d.(*ast.GenDecl)
			if !ok {
				continue
			}
			for _, s := range d.Specs {
				if s, ok := s.(*ast.ValueSpec); ok {
					text := d.Doc.Text() + "\n\n" + s.Doc.Text() + "\n\n" + s.Comment.Text()
					for _, n := range s.Names {
						if n.IsExported() && c.bare(c.typed.Scope().Lookup(n.Name).Type()) && units(text) == 0 {
							say(n.Pos(), n.Name)
						}
					}
				}
				s, ok := s.(*ast.TypeSpec)
				if !ok || !s.Name.IsExported() || s.Assign.IsValid() {
					continue
				}
				under := c.typed.Scope().Lookup(s.Name.Name).Type().Underlying()
				doc := c.docs[s.Name.Name]
				switch under := under.(type) {
				case *types.Struct:
					c.fields(s.Name.Name, doc, s.Type, under, say)
				case *types.Interface:
					c.methods(s.Name.Name, s.Type, under, say)
				default:
					if c.bare(under) && units(doc) == 0 {
						say(s.Pos(), s.Name.Name)
					}
				}
			}
		}
	}
	slices.Sort(out)
	return out
}

// fields looks at the exported fields of a struct. A field's comment is that above it or
// behind it, or where it has none that above the run of lines, without a blank one, that it
// stands in; the comment of the type may say the unit for all of them.
func (c *commented) fields(name, doc string, e ast.Expr, under *types.Struct, say func(token.Pos, string)) {
	list, ok := e.(*ast.StructType)
	if !ok {
		return
	}
	at, above, line := 0, "", 0
	for _, f := range list.Fields.List {
		first := c.fset.Position(f.Pos()).Line
		if f.Doc != nil {
			first = c.fset.Position(f.Doc.Pos()).Line
		}
		if f.Doc.Text() != "" || first > line+1 {
			above = f.Doc.Text()
		}
		line = c.fset.Position(f.End()).Line
		text := f.Doc.Text() + "\n\n" + f.Comment.Text()
		own := strings.TrimSpace(text) != ""
		for i := range max(1, len(f.Names)) {
			v := under.Field(at)
			at++
			if !v.Exported() {
				continue
			}
			field := name + "." + v.Name()
			if c.bare(v.Type()) && units(text) == 0 && (own || units(above) == 0) && units(doc) == 0 {
				say(f.Pos(), field)
			}
			inner, at := v.Type(), f.Type
			for {
				if s, ok := inner.(*types.Slice); ok {
					inner, at = s.Elem(), at.(*ast.ArrayType).Elt
					continue
				}
				break
			}
			if s, ok := inner.(*types.Struct); ok && i == 0 {
				c.fields(field, "", at, s, say)
			}
		}
	}
}

// methods looks at the exported methods of an interface.
func (c *commented) methods(name string, e ast.Expr, under *types.Interface, say func(token.Pos, string)) {
	list, ok := e.(*ast.InterfaceType)
	if !ok {
		return
	}
	for _, f := range list.Methods.List {
		d, ok := f.Type.(*ast.FuncType)
		if !ok || !f.Names[0].IsExported() {
			continue
		}
		for m := range under.ExplicitMethods() {
			if m.Name() != f.Names[0].Name {
				continue
			}
			want := c.groups(d.Params, m.Signature().Params()) + c.groups(d.Results, m.Signature().Results())
			if units(f.Doc.Text()+"\n\n"+f.Comment.Text()) < want {
				say(f.Pos(), name+"."+m.Name())
			}
		}
	}
}

// plainCalls are the calls of a body that computes nothing.
var plainCalls = regexp.MustCompile(`^(append|len|cap|max|min|make|new|copy|clear|string|int|float64|((slices|maps|strings|errors|fmt|strconv|sort)\.\w+)|math\.(NaN|Inf|IsNaN|IsInf))$`)

// plain reports whether a body lists, picks or carries data: no arithmetic, and no call but
// of the lists and texts of the standard library.
func plain(body *ast.BlockStmt) bool {
	is := true
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			switch n.Op {
			case token.ADD, token.SUB, token.MUL, token.QUO:
				is = false
			}
		case *ast.AssignStmt:
			switch n.Tok {
			case token.ADD_ASSIGN, token.SUB_ASSIGN, token.MUL_ASSIGN, token.QUO_ASSIGN:
				is = false
			}
		case *ast.CallExpr:
			if !plainCalls.MatchString(types.ExprString(n.Fun)) {
				is = false
			}
		}
		return is
	})
	return is
}

// hasSource reports whether a type carries where its numbers come from: a field of its own.
func hasSource(t types.Type) bool {
	for {
		switch u := t.Underlying().(type) {
		case *types.Pointer:
			t = u.Elem()
			continue
		case *types.Slice:
			t = u.Elem()
			continue
		case *types.Struct:
			for f := range u.Fields() {
				if strings.HasSuffix(f.Type().String(), "lumber/measure.Source") && f.Exported() {
					return true
				}
			}
		}
		return false
	}
}

// A library is the packages by their names, for the links of comments from one to another.
type library map[string]*commented

// link matches a link to a name in a comment.
var link = regexp.MustCompile(`\[\*?(\w+(?:\.\w+){0,2})\]`)

// sourced reports whether a function names its source, or links to a function or a type that
// does.
func (l library) sourced(c *commented, name string, seen map[string]bool) bool {
	key := c.rel + "." + name
	if seen[key] {
		return false
	}
	seen[key] = true
	d := c.funcs[name]
	if d == nil {
		obj := c.typed.Scope().Lookup(name)
		if obj == nil || !obj.Exported() || c.Name == "measure" {
			return false
		}
		return hasSource(obj.Type()) || l.says(c, c.docs[name], seen)
	}
	if recv := receiver(d); recv != "" && c.Name != "measure" && hasSource(c.typed.Scope().Lookup(recv).Type()) {
		return true
	}
	if plain(d.Body) {
		for v := range c.signature(name).Results().Variables() {
			if hasSource(v.Type()) {
				return true
			}
		}
	}
	return l.says(c, d.Doc.Text(), seen)
}

// says reports whether a comment names a source or links to one.
func (l library) says(c *commented, text string, seen map[string]bool) bool {
	if named.MatchString(oneLine(text)) {
		return true
	}
	for _, m := range link.FindAllStringSubmatch(text, -1) {
		in, name := c, m[1]
		if first, rest, ok := strings.Cut(name, "."); ok && l[first] != nil && c.docs[first] == "" {
			in, name = l[first], rest
		}
		if l.sourced(in, name, seen) {
			return true
		}
	}
	return false
}

// groundless returns the exported functions of a package that compute numbers and name no
// source: "float.Period", "float.Cylinder.Draft".
func (l library) groundless(c *commented) []string {
	var out []string
	for name, d := range c.funcs {
		results := c.signature(name).Results()
		if !gives(results, map[types.Type]bool{}) || paper.MatchString(strings.TrimPrefix(results.At(0).Type().String(), "*")) || plain(d.Body) || l.sourced(c, name, map[string]bool{}) {
			continue
		}
		out = append(out, c.rel+"."+name)
	}
	slices.Sort(out)
	return out
}

// readComments returns the public packages with their comments.
func readComments(t *testing.T) library {
	l := library{}
	for _, p := range module(t).packages {
		if p.public() {
			at := slices.IndexFunc(typedPackages(t), func(q *types.Package) bool { return q.Path() == p.ImportPath })
			l[p.Name] = comment(p, typedPackages(t)[at])
		}
	}
	return l
}

func TestCommentsNameUnits(t *testing.T) {
	for _, c := range readComments(t) {
		for _, line := range c.unitless() {
			t.Error(line)
		}
	}
}

func TestCommentsNameSources(t *testing.T) {
	l := readComments(t)
	excused := map[string]bool{}
	for _, c := range l {
		for _, name := range l.groundless(c) {
			if unsourced[name] == "" {
				t.Errorf("%s computes numbers, and its comment names no source", name)
			}
			excused[name] = true
		}
	}
	for name := range unsourced {
		if !excused[name] {
			t.Errorf("%s is excused, and names a source, computes nothing, or is gone", name)
		}
	}
}

// commentedText returns the comments of one package made of a text.
func commentedText(t *testing.T, body string) (library, *commented) {
	t.Helper()
	known := imports{}
	known["example.org/m/lumber/measure"] = known.check(t, "example.org/m/lumber/measure", "package measure\ntype Source struct{}\n")
	known["other.org/r3"] = known.check(t, "other.org/r3", "package r3\ntype Vec struct{ X, Y float64 }\n")
	source := "package fake\nimport \"example.org/m/lumber/measure\"\nimport \"math\"\nimport \"other.org/r3\"\nvar _ measure.Source\nvar _ r3.Vec\nvar _ = math.Pi\n" + body
	known["math"] = known.check(t, "math", "package math\nconst Pi = 3\nfunc Sqrt(x float64) float64 { return x }\nfunc NaN() float64 { return 0 }\n")
	c := comment(parsed(t, source), known.check(t, "example.org/m/fake", source))
	return library{"fake": c}, c
}

func TestCommentsNameUnitsCatches(t *testing.T) {
	for _, body := range []string{
		"func F(x float64) {}",
		"// F is.\nfunc F(x float64) {}",
		"// F returns the length in SI.\nfunc F() float64 { return 0 }",
		"// F returns the mass m of a part.\nfunc F() float64 { return 0 }",
		"// F returns a length.\n//\n//\tx = 2 m\nfunc F() float64 { return 0 }",
		"// F turns a length, m, over.\nfunc F(x float64) float64 { return x }", // of two groups one is said
		"// F returns what comes in.\nfunc F() float64 { return 0 }",
		"// F is.\nfunc F(at r3.Vec) {}",
		"// F is.\nfunc F(x []float64) {}",
		"// F is.\nfunc F(f func(float64) error) {}",
		"// T is.\ntype T struct{}\n// M is.\nfunc (T) M() float64 { return 0 }",
		"// T is.\ntype T struct{ X float64 }",
		"// T is.\ntype T struct{ X [2]float64 }",
		"// T is.\ntype T struct{ At r3.Vec }",
		"// T is.\ntype T struct {\n\tX float64 // m\n\tY float64\n\n\t// Z is.\n\tZ float64\n}",
		"// T is.\ntype T struct {\n\t// Both in m.\n\tX float64\n\n\tY float64\n}",
		"// T is.\ntype T struct {\n\t// Both in m.\n\tX float64\n\tY float64 // of it\n}",
		"// T is.\ntype T struct{ Parts []struct{ X float64 } }",
		"// T is.\ntype T [8]float64",
		"// T is.\ntype T func(float64)",
		"// T is.\ntype T interface {\n\tM(x float64)\n}",
		"// C is.\nconst C = 1.5",
		"// V is.\nvar V float64",
	} {
		if _, c := commentedText(t, body); len(c.unitless()) == 0 {
			t.Errorf("not seen: %s", body)
		}
	}
	for _, body := range []string{
		"// F is.\nfunc F(n int, s string) error { return nil }",
		"func f(x float64) {}",
		"// F returns the draft, m.\nfunc F() float64 { return 0 }",
		"// F returns the stress (Pa) under a load of w N/m.\nfunc F(w float64) float64 { return w }",
		"// F returns the share that is left of a length in metres.\nfunc F(x float64) float64 { return x }",
		"// F returns α in m/√(°C·day) of x, a number.\nfunc F(x float64) float64 { return x }",
		"// F is.\nfunc F(t T) {}\n// T is.\ntype T struct{ X float64 } // m",
		"// T is one of lengths in m.\ntype T struct{ X, Y float64 }",
		"// T is.\ntype T struct {\n\tX, Y float64 // N, N·m\n\tz float64\n}",
		"// T is.\ntype T struct {\n\t// Both in m.\n\tX float64\n\tY float64\n}",
		"// F returns what is over 2 in. of a board.\nfunc F() float64 { return 0 }",
		"// T are fetches, m.\ntype T [8]float64",
		"// T is.\ntype T interface {\n\tM(x float64) // of x, m\n}",
		"// Lengths in metres.\nconst (\n\tC = 1.5\n)",
		"// N is.\nconst N = 3",
	} {
		if _, c := commentedText(t, body); len(c.unitless()) > 0 {
			t.Errorf("lawful %s reported: %q", body, c.unitless())
		}
	}
}

func TestCommentsNameSourcesCatches(t *testing.T) {
	const source = "// S is.\ntype S struct{ Source *measure.Source; X float64 }\n"
	for _, body := range []string{
		"// F returns a length, m.\nfunc F(x float64) float64 { return 2 * x }",
		"// F returns a length, m.\nfunc F(x float64) float64 { x *= 2; return x }",
		"// F returns a length, m.\nfunc F(x float64) float64 { return math.Sqrt(x) }",
		"// F is [G] twice.\nfunc F(x float64) float64 { return 2 * x }\n// G is.\nfunc G(x float64) float64 { return 3 * x }",
		"// F is [G].\nfunc F(x float64) float64 { return 2 * x }\n// G is [F].\nfunc G(x float64) float64 { return 3 * x }",
		"// T is.\ntype T struct{ X float64 }\n// F is [T].\nfunc F(x float64) T { return T{2 * x} }",
		"// T is.\ntype T struct{ X float64 }\n// M is.\nfunc (t T) M() float64 { return 2 * t.X }",
		"// T holds hidden numbers.\ntype T struct{ x []float64 }\n// F is.\nfunc F(x float64) *T { return &T{[]float64{2 * x}} }",
		source + "// F is of the year 1971.\nfunc F(x float64) S { return S{X: 2 * x} }",
	} {
		if l, c := commentedText(t, body); len(l.groundless(c)) == 0 {
			t.Errorf("not seen: %s", body)
		}
	}
	for _, body := range []string{
		"// F is.\nfunc F(x float64) string { return \"\" }",
		"// F is.\nfunc F(a, b int) int { return a + b }",
		"// F is.\nfunc F(x float64) float64 { if x > 0 { return x }; return math.NaN() }",
		"// F is, by equilibrium.\nfunc F(x float64) float64 { return 2 * x }",
		"// F is, by Gold 1971.\nfunc F(x float64) float64 { return 2 * x }",
		"// F is, by equation 3 (NDS 3.3.3).\nfunc F(x float64) float64 { return 2 * x }",
		"// F is [G] twice.\nfunc F(x float64) float64 { return 2 * x }\n// G is, after\n// Archimedes.\nfunc G(x float64) float64 { return 3 * x }",
		"// F is [T.M].\nfunc F(t T) float64 { return 2 * t.M() }\n// T is.\ntype T struct{ X float64 }\n// M is exact.\nfunc (t T) M() float64 { return 2 * t.X }",
		source + "// M is.\nfunc (s S) M() float64 { return 2 * s.X }",
		source + "// F is one of the [Rows].\nfunc F(i int) S { return g(i) }\nfunc g(int) S { return S{} }\n// Rows are.\nfunc Rows() []S { return nil }",
		"func f(x float64) float64 { return 2 * x }",
	} {
		if l, c := commentedText(t, body); len(l.groundless(c)) > 0 {
			t.Errorf("lawful %s reported: %q", body, l.groundless(c))
		}
	}
}
