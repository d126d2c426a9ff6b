package lumber

import (
	"slices"
	"strings"
	"unicode"

	"example.org/floewright/lumber/measure"
)

// Grades returns every row of the tables of design values, in their order: what
// [Lookup] chooses from. The slice is the caller's.
func Grades() []Grade { return slices.Clone(embedded(loaded()).grades) }

// Lookup returns the design values of a species group and grade for a section,
// as printed in NDS Supplement Table 4A, 4B (Southern Pine, by width) or 4D
// (timbers, 5 in. and more on both sides). It forgives spelling: "doug fir",
// "SYP", "s-p-f", "hem fir", "No.2", "#2", "2", "sel str".
//
// A name it does not know, or a grade the tables do not have for that section,
// is a [*measure.Error] of class [measure.ErrName] that lists the candidates. A
// stud 8 in. or wider gets the values of No.3, as Table 4A says.
//
// Lumber thinner than 2 in. nominal (boards, 5/4 decking) has no published
// design values: its Grade has a specific gravity and nothing else, and every
// strength asked of it is no answer.
func Lookup(species, grade string, s Section) (Grade, error) {
	if err := s.check(); err != nil {
		return Grade{}, err
	}
	t, err := loaded()
	if err != nil {
		return Grade{}, err
	}
	k, err := t.find(species)
	if err != nil {
		return Grade{}, err
	}
	if classOf(s) == board {
		return Grade{Species: k.name, Name: grade, G: k.g, Light: k.light, Table: tableBoard}, nil
	}
	rows := t.rowsFor(k.name, s)
	want := gradeName(grade)
	for _, g := range rows {
		if want == "stud" && g.Name == "Stud" && s.wide() > g.Widest {
			want = "no3" // Table 4A: use the values of No.3
		}
	}
	var fits []Grade
	for _, g := range rows {
		if g.Widest == 0 || s.wide() <= g.Widest {
			fits = append(fits, g)
		}
	}
	for _, g := range fits { // the first that fits is the narrowest width class
		if t.answers(g.Name, want) {
			return g, nil
		}
	}
	why := ""
	if len(fits) == 0 {
		why = "the tables have no values for " + k.name + " of this size"
	}
	return Grade{}, &measure.Error{
		Field: "grade", Text: grade, Class: measure.ErrName, Why: why, Want: candidates(k.name, fits),
	}
}

// rowsFor returns the rows of a species that stand for the section's class.
func (t *tables) rowsFor(species string, s Section) []Grade {
	var out []Grade
	for _, g := range t.grades {
		if g.Species == species && tableFits(g.Table, s) {
			out = append(out, g)
		}
	}
	return out
}

// find returns the species of a forgiving name.
func (t *tables) find(name string) (kindOfWood, error) {
	key := squeeze(name)
	var near []kindOfWood
	for _, k := range t.species {
		full := squeeze(k.name)
		if key == full || slices.Contains(k.spelled, key) {
			return k, nil
		}
		if len(key) >= 5 && strings.HasPrefix(full, key) {
			near = append(near, k)
		}
	}
	if len(near) == 1 {
		return near[0], nil
	}
	var names []string
	for _, k := range t.species {
		names = append(names, k.name)
	}
	return kindOfWood{}, &measure.Error{
		Field: "species", Text: name, Class: measure.ErrName, Want: strings.Join(names, "; "),
	}
}

// squeeze keeps the letters and digits of a name, in lower case.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, s)
}

// gradeName brings a grade's spelling into one form: "#2", "No. 2", "2",
// "Number 2" are "no2".
func gradeName(s string) string {
	key := squeeze(gradeWords.Replace(strings.ToLower(s)))
	if key != "" && key[0] >= '1' && key[0] <= '3' {
		key = "no" + key
	}
	if other, ok := gradeSpelled[key]; ok {
		return other
	}
	return key
}

var gradeWords = strings.NewReplacer("&", " ", " and ", " ", "number", "no", "better", "btr", "grade", "", "prime", "")

// gradeSpelled maps what stamps and yards write to the tables' names. A mixed
// stamp counts as the lower of its grades: where the tables have one value for
// both it is the same.
var gradeSpelled = map[string]string{
	"ss": "selectstructural", "selstr": "selectstructural", "selectstr": "selectstructural",
	"selstruct": "selectstructural", "selectstruct": "selectstructural", "select": "selectstructural",
	"dss": "denseselectstructural", "densess": "denseselectstructural", "ndss": "nondenseselectstructural",
	"nondensess": "nondenseselectstructural", "clear": "clearstructural", "clearstr": "clearstructural",
	"const": "construction", "constr": "construction", "std": "standard", "stand": "standard",
	"stdbtr": "standard", "standardbtr": "standard", "standbtr": "standard", "util": "utility",
	"no1no2": "no2", "no12": "no2", "no2btr": "no2", "no3btr": "no3", "studbtr": "stud",
	"no1d": "no1dense", "no2d": "no2dense", "no1nd": "no1nondense", "no2nd": "no2nondense",
}

// answers reports whether a row answers to a grade in its one form. Southern Pine
// lists No.3 and Stud on one line.
func (t *tables) answers(name, want string) bool {
	key := t.keys[name]
	return key == want || (key == "no3stud" && (want == "no3" || want == "stud"))
}

func candidates(species string, rows []Grade) string {
	var names []string
	for _, g := range rows {
		if !slices.Contains(names, g.Name) {
			names = append(names, g.Name)
		}
	}
	if len(names) == 0 {
		return "another size or species"
	}
	return strings.Join(names, "; ") + " (" + species + ", " + rows[0].Table + ")"
}
