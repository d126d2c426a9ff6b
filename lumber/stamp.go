package lumber

import (
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Stamp is what a grade stamp or an end tag says. What it does not say, or what
// could not be read, is empty.
type Stamp struct {
	Species  string // of the tables: "Southern Pine"
	Grade    string // "No.2"
	Moisture string // when surfaced: "dry" (S-DRY, KD19), "green" (S-GRN)
	Use      string // use category of the treatment: "UC4B"
	Incised  bool   // the stamp says so; look at the faces for slits
}

// moistures maps the marks of moisture to what they mean.
var moistures = map[string]string{
	"sdry": "dry", "dry": "dry", "kd": "dry", "kd19": "dry", "kd15": "dry", "kdht": "dry", "mc15": "dry", "mc19": "dry",
	"kdat": "dry", "sgrn": "green", "sgreen": "green", "grn": "green", "green": "green",
}

// ReadStamp reads a grade stamp or an end tag as it was copied down, in any
// order: "S-P-F No.2 KD-HT", "SYP #2 Prime KD19", "D FIR (N) 2&BTR S-GRN",
// "ground contact UC4A". A mixed grade counts as the lower. Words it does not
// know (agency, mill number) are passed over; a text of more than 200 characters
// is a [*measure.Error].
//
// A stamp says what the moisture was when the piece was surfaced, never what it
// is: it does not make a [Member] dry.
func ReadStamp(text string) (Stamp, error) {
	var st Stamp
	if len(text) > 200 {
		return st, &measure.Error{
			Field: "stamp", Text: text[:20] + "...", Class: measure.ErrSyntax, Want: "at most 200 characters",
		}
	}
	t, err := loaded()
	if err != nil {
		return st, err
	}
	// A mill's number is no grade: a bare 1, 2 or 3 counts only where nothing else
	// names one.
	words := strings.FieldsFunc(strings.ReplaceAll(text, "1/2", "No.1/No.2"), func(r rune) bool {
		return strings.ContainsRune(" \t\n\r,;:|/", r)
	})
	used := make([]bool, len(words))
	var bare string
	// Longest runs of words first, so that "Spruce-Pine-Fir (South)" is not read
	// as "Spruce-Pine-Fir", nor "No.1 Dense" as "No.1".
	windows(len(words), 6, func(i, j int) {
		if slices.Contains(used[i:j], true) {
			return
		}
		written := strings.Join(words[i:j], " ")
		key := squeeze(written)
		species, grade := t.exact(key), t.gradeOf(written)
		ok := true
		switch {
		case key == "1" || key == "2" || key == "3":
			if !strings.Contains(written, "#") {
				if grade > bare {
					bare = grade
				}
				return
			}
			st.Grade = lower(st.Grade, grade)
		case j-i == 1 && moistures[key] != "":
			st.Moisture = moistures[key]
		case len(key) == 4 && strings.HasPrefix(key, "uc") && key[2] >= '1' && key[2] <= '5':
			st.Use = strings.ToUpper(key)
		case key == "groundcontact":
			if st.Use == "" {
				st.Use = "UC4A"
			}
		case key == "incised":
			st.Incised = true
		case species != "":
			if st.Species != "" && st.Species != species {
				err = &measure.Error{
					Field: "stamp", Text: text, Class: measure.ErrSyntax,
					Why: "it names " + st.Species + " and " + species, Want: "one species; or none, for the weakest of the yard",
				}
			}
			st.Species = species
		case grade != "":
			st.Grade = lower(st.Grade, grade)
		default:
			ok = false
		}
		for k := i; ok && k < j; k++ {
			used[k] = true
		}
	})
	if err != nil {
		return Stamp{}, err
	}
	if st.Grade == "" {
		st.Grade = bare
	}
	return st, nil
}

// lower returns the lower of two grades; none is no grade.
func lower(a, b string) string {
	if a == "" || gradeRank(b) > gradeRank(a) {
		return b
	}
	return a
}

// windows calls f for the runs of at most most words among n, longest first.
func windows(n, most int, f func(i, j int)) {
	for length := min(n, most); length >= 1; length-- {
		for i := 0; i+length <= n; i++ {
			f(i, i+length)
		}
	}
}

// exact returns the species of a squeezed name that is spelled out.
func (t *tables) exact(key string) string {
	for _, k := range t.species {
		if key == squeeze(k.name) || slices.Contains(k.spelled, key) {
			return k.name
		}
	}
	return ""
}

// gradeOf returns the tables' name of a grade, if the words are one.
func (t *tables) gradeOf(words string) string {
	key := gradeName(words)
	if strings.Trim(squeeze(words), "0123456789") == "" && len(squeeze(words)) > 1 {
		return "" // a number
	}
	for _, g := range t.grades {
		if g.Name != "No.3 and Stud" && gradeName(g.Name) == key {
			return g.Name
		}
	}
	return ""
}

// gradeRank orders grades from the best to the least, so that a mixed stamp
// counts as the lower one.
func gradeRank(name string) int {
	return slices.Index([]string{
		"denseselectstructural", "clearstructural", "selectstructural", "nondenseselectstructural",
		"no1btr", "no1dense", "no1", "no1nondense", "no2dense", "construction", "no2", "no2nondense",
		"stud", "standard", "no3", "utility",
	}, gradeName(name))
}

// Lookup returns the design values of the stamp for a section, as the function
// [Lookup] does. Where the species is not known it is the weakest of the yard's
// species (all species where none are named); where the grade is not known it
// counts as No.3, as Utility to 4 in. of width if that is less, and for timbers,
// whose table ends there, as No.2.
func (st Stamp) Lookup(s Section, yard ...string) (Grade, error) {
	if err := s.check(); err != nil {
		return Grade{}, err
	}
	species := yard
	if st.Species != "" {
		species = []string{st.Species}
	}
	if st.Grade != "" || classOf(s) == board {
		return Weakest(st.Grade, s, species...)
	}
	if classOf(s) == heavySize {
		return Weakest("No.2", s, species...)
	}
	g, err := Weakest("No.3", s, species...)
	if err != nil || s.wide() > widestOf(widths[2]) {
		return g, err
	}
	u, err := Weakest("Utility", s, species...)
	if err != nil {
		return g, nil // the species has no Utility
	}
	if nominalAbove(s.wide()) < 4 { // its size factors make it the less in all
		return u, nil
	}
	name := g.Species
	g = weaker(g, u)
	// Size factors differ between the two, so that the mixture has none above 1.
	g.Species, g.Name, g.Table = name, "No.3 or Utility", tableMixed
	return g, nil
}
