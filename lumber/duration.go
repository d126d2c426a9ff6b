package lumber

import "example.org/floewright/lumber/measure"

// A Duration is how long the shortest load of a combination acts in all, over
// the life of the member. The zero value is the cautious one.
type Duration int

// The durations of NDS Table 2.3.2. Impact (CD 2.0) is left out: the table bars
// it for lumber treated with waterborne preservatives, which is what docks are
// built of.
const (
	Permanent  Duration = iota // dead load: CD 0.9
	TenYears                   // people: 1.0
	Snow                       // two months: 1.15
	SevenDays                  // building, hauling out: 1.25
	TenMinutes                 // wind, waves of a storm: 1.6
	durations
)

var durationNames = [durations]struct {
	name string
	cd   float64
}{
	{"permanent", 0.9},
	{"ten years", 1.0},
	{"snow, two months", 1.15},
	{"seven days", 1.25},
	{"ten minutes", 1.6},
}

// String returns the duration in words.
func (t Duration) String() string {
	if t < 0 || t >= durations {
		return "no duration"
	}
	return durationNames[t].name
}

// Factor returns the load duration factor CD for a property; it is 1 for Fc⊥, E
// and Emin. NDS Table 2.3.2.
func (t Duration) Factor(p Property) (measure.Factor, error) {
	if t < 0 || t >= durations {
		return measure.Factor{}, &measure.Error{
			Field: "duration", Text: "out of the list", Class: measure.ErrName,
			Want: "Permanent, TenYears, Snow, SevenDays or TenMinutes",
		}
	}
	if err := p.check(); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "CD", Name: "load duration", Value: durationNames[t].cd, Why: t.String(), Source: srcCD}
	if p == FcPerp || p == E || p == Emin {
		f.Value, f.Why = 1, notFor+p.String()
	}
	return f, nil
}
