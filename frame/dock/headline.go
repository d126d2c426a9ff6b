package dock

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Headline is one of the twelve questions that decide whether a dock built on ice
// over drums works, and the checks that answer it, the worst first.
type Headline struct {
	Name   string
	Checks []measure.Check
}

// Verdict is that of the worst check; no answer without one.
func (h Headline) Verdict() measure.Verdict {
	if len(h.Checks) == 0 {
		return measure.NoAnswer
	}
	return h.Checks[0].Verdict()
}

// twelve lists the questions and, by topic, the beginnings of the names of the checks
// that answer each; a topic without any gives all of its checks.
var twelve = []struct {
	name   string
	checks map[string][]string
}{
	{"Spans: decking, joists, rims", map[string][]string{
		"LUMBER":                         {"Deck boards", "Worst joist"},
		"WHAT BEARS ON WHAT":             {"Joists under the deck boards"},
		"FRAME, THE WORST OF EVERYTHING": {"Worst joist", "Worst rim, whatever"},
	}},
	{"What each float bears on", map[string][]string{
		"WHAT BEARS ON WHAT": {"Room for", "Floats kept", "Push that spreads"},
	}},
	{"Boards over the floats before the ice goes", map[string][]string{
		"WHAT BEARS ON WHAT": {"Boards that must"},
		"TIES AND DRUMS":     {"Screws of a board"},
	}},
	{"Everyone at one edge, and the number to post", map[string][]string{
		"AFLOAT, EVERYONE AT ONE EDGE":   nil,
		"FRAME, THE WORST OF EVERYTHING": {"Lowest deck corner"},
		"AFLOAT, STANDARD LOADS":         {"Criterion: " + tiltMost, "Criterion: " + endDrop},
	}},
	{"Uniform load and immersion", map[string][]string{
		"AFLOAT, NOBODY ABOARD":  nil,
		"AFLOAT, UNIFORM LOAD":   nil,
		"AFLOAT, STANDARD LOADS": {"Criterion: " + deckDry, "Criterion: " + immersed, "Criterion: " + crossLevel},
	}},
	{"A float lost, and a rest whatever comes", map[string][]string{
		"AFLOAT, ONE FLOAT FULL OF WATER": nil,
		"FRAME, THE WORST OF EVERYTHING":  {"Situations in which"},
	}},
	{"Ties, and what is owed to the drums", map[string][]string{
		"TIES AND DRUMS": {"Tie of", "What that tie", "Coating of the tie", "Nails at", "What was in it", "Leak test", "Bungs", "Suction", "Pressure"},
	}},
	{"Joints: pulled out, lifted, to and fro", map[string][]string{
		"JOINTS": {"Joist's end carried", "Joist's end held", "Joist's end to and fro", "Joist pulled off", "Coating", "Hangers"},
	}},
	{"What keeps the frame from racking", map[string][]string{
		"JOINTS":                         {"Joist's end slid"},
		"FRAME, THE WORST OF EVERYTHING": {"Worst rim, bent sideways"},
	}},
	{"Hinge pins against the neighbour", map[string][]string{
		"LINES AND WATER LEVEL": {"Hinge"},
	}},
	{"Lines, and the bottom at low water", map[string][]string{
		"LINES AND WATER LEVEL": {"Line", "Lowest level", "Highest level", "Depth", "Ramp", "Hauling"},
	}},
	{"Parked on the ice under snow, and the law", map[string][]string{
		"ICE":                      nil,
		"LOCAL LIMITS AND PERMITS": nil,
	}},
}

// headlines gathers the twelve from the topics, the worst first.
func headlines(topics []Topic) []Headline {
	out := make([]Headline, len(twelve))
	for i, q := range twelve {
		out[i].Name = q.name
		for _, t := range topics {
			begins, answers := q.checks[t.Title]
			if !answers {
				continue
			}
			for _, c := range t.Checks {
				if begins == nil || slices.ContainsFunc(begins, func(s string) bool { return strings.HasPrefix(c.Name, s) }) {
					out[i].Checks = append(out[i].Checks, c)
				}
			}
		}
		slices.SortStableFunc(out[i].Checks, worseFirst)
	}
	slices.SortStableFunc(out, func(a, b Headline) int { return worseFirst(a.worst(), b.worst()) })
	return out
}

func (h Headline) worst() measure.Check {
	if len(h.Checks) == 0 {
		return measure.Check{}
	}
	return h.Checks[0]
}

// Worst is the topic's worst check: what is short before what has no answer before
// what holds, and then the one that uses most of its limit. A topic without checks has
// a check without a name.
func (t Topic) Worst() measure.Check {
	if len(t.Checks) == 0 {
		return measure.Check{}
	}
	return slices.MinFunc(t.Checks, worseFirst)
}

// worseFirst sorts what is short before what has no answer before what holds, and
// within each by the share of its limit that it uses.
func worseFirst(a, b measure.Check) int {
	rank := func(c measure.Check) int {
		return slices.Index([]measure.Verdict{measure.Short, measure.NoAnswer, measure.Holds}, c.Verdict())
	}
	return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(used(b), used(a)))
}

// used is the share of its limit that a check uses. Where there is none to say, as for
// a limit of 0, it is beyond all others for what is short, and 0 for the rest.
func used(c measure.Check) float64 {
	switch x := c.Ratio(); {
	case !math.IsNaN(x):
		return x
	case c.Verdict() == measure.Short:
		return math.Inf(1)
	}
	return 0
}
