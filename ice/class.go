package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// kgPerCm2 is one kilogram-force per square centimetre in pascals, exact.
const kgPerCm2 = measure.KilogramForce / 1e-4

// A Class is a bearing class of the rule for loads that move,
//
//	P = A h²
//
// with P the force of everything on the one spot and h the effective thickness.
// The rule is a record of loads that ice did and did not carry for a short
// time; it is no strength and says nothing about a load that stands.
// Sources: L. W. Gold, Canadian Geotechnical Journal 8, 1971 (form and spread);
// the Source of each class.
type Class struct {
	Name    string
	Printed string  // A, or the rule it follows from, as the source prints it
	A       float64 // Pa
	Source  *measure.Source
	Range   measure.Range // of thickness, where the source gives one
}

// openThickness is the range of a class whose source prints none.
func openThickness(s *measure.Source) measure.Range {
	return measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: thickest, Source: s}
}

// thickest bounds every thickness in metres: more is taken for a slip.
const thickest = 3.0

// classes lists A as printed. A rule h = c √W (inches, short tons) is
// P = (2000/c²) h² in pounds and inches.
var classes = []Class{
	{"low risk", "3.5 kg/cm²", 3.5 * kgPerCm2, albertaOntario, openThickness(albertaOntario)},
	{
		"public weight table", "50 psi", 50 * measure.PSI, minnesotaWeight,
		measure.Range{Kind: measure.Length, Lo: 4 * measure.Inch, Hi: 20 * measure.Inch, Source: minnesotaWeight},
	},
	{"tolerable risk", "4 kg/cm²", 4 * kgPerCm2, albertaOntario, openThickness(albertaOntario)},
	{"load chart A", "4", 4 * kgPerCm2, northwest, openThickness(northwest)},
	{"moderate risk", "5 kg/cm²", 5 * kgPerCm2, albertaOntario, openThickness(albertaOntario)},
	{"load chart B", "5", 5 * kgPerCm2, northwest, openThickness(northwest)},
	{"slow vehicles", "h = 5 √W", 2000.0 / 25 * measure.PSI, alaskaForum, openThickness(alaskaForum)},
	{"substantial risk", "6 kg/cm²", 6 * kgPerCm2, albertaOntario, openThickness(albertaOntario)},
	{"load chart C", "6", 6 * kgPerCm2, northwest, openThickness(northwest)},
	{"crystalline ice", "a = 11 √Q", 1000.0 / (11 * 11) * kgPerCm2, russianRule, openThickness(russianRule)},
	{"rough guide", "P = h²/16", 2000.0 / 16 * measure.PSI, manualGuide, openThickness(manualGuide)},
	{"notice, S = 1", "h = 4 √W", 2000.0 / 16 * measure.PSI, alaskaNotice, openThickness(alaskaNotice)},
}

// Classes returns the bearing classes for moving loads on clear lake ice,
// strictest first. Some are from memory: see the status of their source.
func Classes() []Class { return append([]Class(nil), classes...) }

// defaultClass is the strictest class that was read in its source: 50 psi.
func defaultClass() Class {
	for _, c := range classes {
		if c.Source.Status >= measure.Read {
			return c
		}
	}
	return Class{}
}

// Load returns the force in N that the class gives for an effective thickness
// h in m, A h². It refuses a thickness outside the range of its source.
func (c Class) Load(h float64) (float64, error) {
	if err := c.valid(); err != nil {
		return 0, err
	}
	if err := c.span().Check("effective thickness", h); err != nil {
		return 0, err
	}
	return c.A * h * h, nil
}

// Thickness returns the effective thickness in m that the class asks for under
// a force in N, √(P/A), and never less than the thinnest ice its source covers.
// It refuses a force that needs thicker ice than its source covers. Within 0.8 units
// in the last place.
// Worst at (4.169e+04, 1341), ordered as in testdata/accuracy.csv.
func (c Class) Thickness(force float64) (float64, error) {
	if err := c.valid(); err != nil {
		return 0, err
	}
	r := measure.Range{Kind: measure.Force, Lo: 0, Hi: c.A * c.span().Hi * c.span().Hi, OpenLo: true, Source: c.Source}
	// A row of the source's own table must not fail by the last bit.
	if err := r.Check("load", force*(1-1e-12)); err != nil {
		return 0, r.Check("load", force)
	}
	return math.Max(math.Sqrt(force/c.A), c.span().Lo), nil
}

// span is the range of thickness; a class made without one has the package's.
func (c Class) span() measure.Range {
	if c.Range.Hi > 0 {
		return c.Range
	}
	return openThickness(c.Source)
}

// valid refuses a class without a coefficient or without a source.
func (c Class) valid() error {
	if math.IsNaN(c.Range.Lo) || math.IsNaN(c.Range.Hi) {
		return &measure.Error{Field: "range of class " + c.Name, Text: "NaN", Class: measure.ErrRange, Want: "thicknesses from one to another"}
	}
	if c.Source == nil {
		return &measure.Error{Field: "class", Text: c.Name, Class: measure.ErrName, Why: "a bearing class needs a source", Want: "one of Classes, or a class with its source"}
	}
	r := measure.Range{Kind: measure.Stress, Lo: 0, Hi: 250 * measure.PSI, OpenLo: true, Source: goldUpper}
	return r.Check("coefficient A of the bearing class", c.A)
}

// goldUpper sets the largest coefficient: what good covers were reported to
// have carried. Failures were reported from 50 psi up.
var goldUpper = &measure.Source{
	Title:   "L. W. Gold, Use of ice covers for transportation, Canadian Geotechnical Journal 8, 170-181",
	Edition: "1971", Locator: "abstract", Status: measure.Read,
}
