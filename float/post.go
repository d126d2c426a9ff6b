package float

import (
	"errors"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A Posting is the number of people for the sign.
type Posting struct {
	People int // that many may stand anywhere along the edge

	// With one more, at the place At on the deck:
	At      r3.Vec        // m, in the axes of the platform
	Breaks  measure.Check // the first rule that no longer holds, or
	Failure error         // the failure to find a rest, or
	Wet     bool          // the lowest corner under water, where no rule was given, or
	Full    bool          // no more room along the edge

	Notices []string // see Platform.Notices
}

// Post returns how many people of the crowd's kind (its People is not looked
// at) may stand together at any place along the edge with every rule holding, at
// the rest that [Platform.Settle] finds,
// and what breaks first with one more, where. Without rules the platform must
// find a rest with every corner of the deck dry. A rule without an answer does
// not hold. A platform that breaks a rule with nobody aboard has a Posting of -1
// people.
func (p *Platform) Post(c Crowd, rules ...Rule) (Posting, error) {
	k, err := p.crowded(c)
	if err != nil {
		return Posting{}, err
	}
	if err := checkRules("rules", rules); err != nil {
		return Posting{}, err
	}
	const most = 10000
	for n := 0; n <= most; n++ {
		out := Posting{People: n - 1, Notices: p.Notices()}
		if n > k.room() {
			out.Full = true
			return out, nil
		}
		broken, err := k.breaks(n, rules, &out)
		if err != nil {
			return Posting{}, err
		}
		if broken {
			return out, nil
		}
	}
	return Posting{People: most, Full: true, Notices: p.Notices()}, nil
}

// breaks looks for a place where n people break a rule.
func (k *crowded) breaks(n int, rules []Rule, out *Posting) (bool, error) {
	s, err := k.worst(n)
	var f *Failure
	if errors.As(err, &f) {
		out.At, out.Failure = k.edge.at(s), f
		return true, nil
	}
	if err != nil {
		return false, err
	}
	if len(rules) == 0 {
		h, err := k.height(s, n)
		if err != nil {
			return false, err
		}
		out.At, out.Wet = k.edge.at(s), !(h >= 0)
		return out.Wet, nil
	}
	places := append([]float64{s}, k.edge.stations()...)
	if n == 0 {
		places = places[:1]
	}
	for _, s := range places {
		k.place(s, n)
		for _, rule := range rules {
			// A rule may keep what it is given: it gets a copy.
			check, err := rule(k.with.With())
			if errors.As(err, &f) {
				out.At, out.Failure = k.edge.at(s), f
				return true, nil
			}
			if err != nil {
				return false, err
			}
			if check.Verdict() != measure.Holds {
				out.At, out.Breaks = k.edge.at(s), check
				return true, nil
			}
		}
	}
	return false, nil
}

// checkRules refuses a rule that is none.
func checkRules(field string, rules []Rule) error {
	if slices.ContainsFunc(rules, func(r Rule) bool { return r == nil }) {
		return &measure.Error{Field: field, Class: measure.ErrUnknown, Want: "no rule that is nil"}
	}
	return nil
}
