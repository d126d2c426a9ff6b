package fasten

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Finish is a coating or metal and what it stands.
type Finish struct {
	Name   string
	Family string // zinc, stainless, copper, aluminium, plain steel: families do not mix
	Level  int    // 0 for dry rooms, 1 not in treated wood, 2 treated wood that dries, 3 the same, of stainless, 4 salt or wet for good
	Use    string // what it comes on: "fasteners", "but nails", "connectors", "both"
	Source *measure.Source
}

// stands names the levels of [Finish] by what such a coating or metal stands.
var stands = []string{
	"for dry rooms", "not in treated wood", "for treated wood that dries", "stainless, for treated wood that dries", "for salt, or wet for good",
}

// loadFinishes reads the table of finishes.
func (t *tables) loadFinishes() error {
	rows, err := lines("finishes")
	if err != nil {
		return err
	}
	for _, r := range rows {
		st, err := r.status()
		if err != nil {
			return err
		}
		t.finishes = append(t.finishes, Finish{
			Name: r["name"], Family: r["family"], Level: int(r.num("level")), Use: r["use"],
			Source: &measure.Source{Title: r["source"], Status: st},
		})
		t.spelled = append(t.spelled, " "+squeeze(r["name"])+" "+r["spelled"]+" ")
	}
	return nil
}

// squeeze keeps letters and digits.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.ToLower(s))
}

// Finishes returns the table of coatings and metals.
func Finishes() []Finish { return slices.Clone(embedded().finishes) }

// finish finds a finish by name; the empty name is unknown.
func finish(name string) (Finish, error) {
	t, err := loaded()
	if err != nil {
		return Finish{}, err
	}
	if name == "" {
		return Finish{}, unknown("Finish", "the coating or metal: it is on the box, or ask the yard")
	}
	var names []string
	for i, f := range t.finishes {
		if key := squeeze(name); key != "" && strings.Contains(t.spelled[i], " "+key+" ") {
			return f, nil
		}
		names = append(names, f.Name)
	}
	if len(name) > 60 {
		name = name[:60]
	}
	return Finish{}, &measure.Error{Field: "Finish", Text: name, Class: measure.ErrName, Want: strings.Join(names, ", ")}
}

// A Metal is one metal part of a joint.
type Metal struct {
	Part      string // "bolt", "washer", "hanger"
	Finish    string // as [Finishes] names it; empty is unknown: no answer
	Connector bool   // a bracket, hanger or angle
	Nail      bool
}

// An Exposure is what a joint's metal stands in. The zero value is the worst:
// unknown treatment, salt, wet for good.
type Exposure struct {
	Treatment string // "CCA", "ACQ", "CA", "MCA", "borate", "none"; empty is unknown and counts as copper
	Fresh     bool   // fresh water, and more than 300 ft from salt
	Drains    bool   // the joint dries between wettings
	Indoors   bool   // dry room
}

var (
	srcFinish = &measure.Source{
		Title:   "Guidance on metal in treated wood (Southern Forest Products Association; USDA Forest Service 0677-2809; Wood Preservation Canada)",
		Locator: "hot-dip galvanized, stainless, silicon bronze or copper; G185 or A123 for connectors", Status: measure.Read,
	}
	srcSevere = &measure.Source{Title: "Salt, trapped or constant wetting: stainless 316", Locator: "stainless read, the grade from memory", Status: measure.Memory}
	srcFamily = &measure.Source{Title: "Guidance on metal in treated wood (Southern Forest Products Association)", Locator: "connector and fasteners of one metal", Status: measure.Read}
	srcAlu    = &measure.Source{Title: "USDA Forest Service 0677-2809", Locator: "no aluminium against copper-treated wood", Status: measure.Read}
	srcDry    = &measure.Source{Title: "International Residential Code R317.3", Locator: "borate in dry rooms: plain steel", Status: measure.Read}
)

// treatments by name: whether they bring copper, and what to know of them.
var treatments = map[string]struct {
	copper bool
	note   string
}{
	"":       {true, "treatment not known: taken as dissolved copper"},
	"none":   {false, ""},
	"borate": {false, "borate washes out of wet wood: not for a dock"},
	"cca":    {true, ""},
	"acq":    {true, "ACQ eats metal about twice as fast as CCA"},
	"ca":     {true, "copper azole eats metal about twice as fast as CCA"},
	"mca":    {true, "micronized copper eats metal less than dissolved copper"},
}

// needs returns the least level the exposure asks for, and whose rule that is.
func (e Exposure) needs(copper bool) (int, *measure.Source) {
	switch {
	case e.Indoors && !copper:
		return 0, srcDry
	case !e.Indoors && (!e.Fresh || !e.Drains):
		return 4, srcSevere
	}
	return 2, srcFinish
}

// Check compares each metal part with what the exposure asks for, by the levels
// of [Finish], and the parts with each other: metals of two families are
// refused, and so is aluminium against copper-treated wood. A finish that is not
// known gives no answer; a name that is not in the table is an error.
func (e Exposure) Check(parts ...Metal) ([]measure.Check, error) {
	treated, ok := treatments[strings.ToLower(e.Treatment)]
	if !ok {
		return nil, &measure.Error{Field: "Treatment", Text: e.Treatment, Class: measure.ErrName, Want: "CCA, ACQ, CA, MCA, borate, none, or empty where it is not known"}
	}
	level, rule := e.needs(treated.copper)
	var out []measure.Check
	var families []string
	var open error
	aluminium := 0.0
	for _, p := range parts {
		c := measure.Check{Name: "coating of the " + p.title(), Kind: measure.Count, Limit: float64(level), AtLeast: true, Steps: slices.Clone(stands), Rule: rule, Rests: e.rests()}
		if treated.note != "" {
			c.Notes = append(c.Notes, treated.note)
		}
		f, err := finish(p.Finish)
		switch {
		case err != nil && p.Finish != "":
			return nil, err
		case err != nil:
			c.Value, c.Err, open = math.NaN(), err, err
		default:
			c.Value = float64(p.level(f, &c))
			if !slices.Contains(families, f.Family) {
				families = append(families, f.Family)
			}
			if f.Family == "aluminium" {
				aluminium++
			}
		}
		out = append(out, c)
	}
	if len(parts) > 1 {
		c := measure.Check{Name: "one family of metal", Kind: measure.Count, Value: float64(len(families)), Limit: 1, Rule: srcFamily, Err: open}
		if len(families) > 1 {
			c.Notes = append(c.Notes, strings.Join(families, " against ")+": the baser one is eaten; never mix")
			c.Err = nil // two are too many, whatever the unknown one is
		}
		out = append(out, c)
	}
	if aluminium > 0 && treated.copper {
		out = append(out, measure.Check{Name: "aluminium against copper-treated wood", Kind: measure.Count, Value: aluminium, Limit: 0, Rule: srcAlu})
	}
	return out, nil
}

func (p Metal) title() string {
	if p.Part == "" {
		return "metal"
	}
	return p.Part
}

// level returns what a finish counts on a part: one that does not come on it, or
// is not accepted on it, counts as level 1 at most.
func (p Metal) level(f Finish, c *measure.Check) int {
	c.Notes = append(c.Notes, fmt.Sprintf("%s: %s (%s)", f.Name, stands[min(max(0, f.Level), len(stands)-1)], f.Source))
	fits := f.Use == "both" || p.Connector == (f.Use == "connectors")
	if f.Use == "but nails" && p.Nail {
		fits = false
	}
	if !fits && f.Level > 1 {
		c.Notes = append(c.Notes, f.Name+" is not accepted on this part")
		return 1
	}
	return f.Level
}

func (e Exposure) rests() []measure.Assumption {
	say := func(name, yes, no string, known bool) measure.Assumption {
		if known {
			return measure.Assumption{Name: name, Text: yes, Known: measure.Measured}
		}
		return measure.Assumption{Name: name, Text: no, Known: measure.Assumed}
	}
	if e.Indoors {
		return []measure.Assumption{say("place", "a dry room", "", true)}
	}
	return []measure.Assumption{
		say("water", "fresh", "salt, or within 300 ft of it", e.Fresh),
		say("wetting", "dries between wettings", "wet for good", e.Drains),
	}
}
