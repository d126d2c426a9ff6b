package ice

import (
	"fmt"
	"strings"

	"example.org/floewright/lumber/measure"
)

// longest is how many hours a load may stand by the guide's own rule; for more
// the sheet sags by creep: see Sheet.Flooding and Sheet.Beside.
const longest = 24.0

// parkedFactor doubles the thickness required under a load that stands.
//
//	h = 4 S √W (in, short tons), S = 2 for a load parked more than 2 h
//
// The notice doubles from 2 h on; here every load that stands is doubled, and
// the doubling is applied to the strictest rule rather than to the notice's
// own, which asks for less.
var parkedFactor = measure.Factor{
	Symbol: "S", Name: "load that stands", Value: 2,
	Why:    "double thickness when parked more than 2 h; taken from the first minute on",
	Source: alaskaNotice,
}

// standing lists the rules by weight for loads that stand: h = 4 S √W with S = 2.
var standing = []Class{
	{"notice, S = 2", "h = 8 √W", 2000.0 / 64 * measure.PSI, alaskaNotice, openThickness(alaskaNotice)},
}

// StandingClasses returns the rules by weight that were read for loads that stand more
// than two hours, in the form of [Classes] (University of Alaska Anchorage, 2004). They
// are data and no answer: [Sheet.ParkedHours] doubles the strictest rule of all, which
// asks for two or three times as much ice.
func StandingClasses() []Class { return append([]Class(nil), standing...) }

// ParkedHours checks the sheet under a load that stands on one spot for
// up to 24 hours, with the people beside it counted in, one at the least: double the
// thickness that the strictest rules ask for under the same load when it crosses, as in
// [Sheet.Required]. Beyond 24 hours the check has no answer, its Err of class
// measure.ErrNotComputed: days and weeks need the sag of the sheet against its freeboard,
// [Sheet.Flooding] and [Sheet.Beside], beside this rule for the first day. P = A h² alone
// says nothing about a load that stands.
func (s Sheet) ParkedHours(load Crossing, hours float64) (measure.Check, error) {
	name := fmt.Sprintf("parked %s, %s", measure.Time.Format(hours*3600, measure.SI), load.label())
	return s.parked(name, load, hours)
}

func (s Sheet) parked(name string, load Crossing, hours float64) (measure.Check, error) {
	r := measure.Range{Kind: measure.Time, Lo: 0, Hi: 1e9, Source: sizeRange}
	if err := r.Check("time on the spot", hours*3600); err != nil {
		return measure.Refuse(name, err), err
	}
	c, err := s.judge(name, load, &parkedFactor, nil)
	if err != nil || hours <= longest {
		return c, err
	}
	refused := measure.Refuse(name, &measure.Error{
		Field: "time on the spot", Kind: measure.Time, Value: hours * 3600, Class: measure.ErrNotComputed,
		Why: "days and weeks need the sag of the sheet against its freeboard (Flooding, Beside); ask an ice engineer",
	})
	refused.Kind, refused.AtLeast, refused.Hazard = c.Kind, true, true
	for _, n := range c.Notes { // no thickness: it would read as an answer
		if !strings.HasPrefix(n, "thickness required") {
			refused.Notes = append(refused.Notes, n)
		}
	}
	return refused, nil
}
