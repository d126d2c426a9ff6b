package dock

import (
	"strings"

	"example.org/floewright/lumber/measure"
)

// remedies says, by the beginning of a check's name, what a builder may change where it
// is short: the usual ways, in the order of their cost (common practice, no source).
var remedies = []struct{ begin, say string }{
	{"Weight of one", "more hands, or a sled; shorter or drier pieces"},
	{"Weight of the whole dock", "more floats, or less weight"},
	{"Water to the", "more floats, or less weight; floats lower under the frame"},
	{"Draft of", "more floats, or less weight; people and things spread"},
	{"Most immersed", "more floats, or less weight; people and things spread"},
	{"Lowest deck edge", "more floats, farther out; fewer people"},
	{"Lowest deck corner", "more floats at the corners; a stiffer frame; fewer people"},
	{"Tilt of the deck", "a wider dock, floats farther out, a lower deck; fewer people"},
	{"Everyone together", "fewer people, and a sign that says so; a wider dock, floats farther out"},
	{"Criterion: tilt", "a wider dock, floats farther out, a lower deck"},
	{"Criterion: cross level", "weights moved to the middle, or floats to the low side"},
	{"Criterion:", "more floats, farther out, or less weight"},
	{"Deck boards", "joists closer to each other, or thicker boards"},
	{"Joists under", "joists closer to each other, or thicker boards"},
	{"Worst joist", "floats or joists closer to each other; deeper joists; a better grade, without slits"},
	{"Worst rim, bent sideways", "hauled by both corners at once; one more ply; a better grade, without slits"},
	{"Worst rim", "one more ply; deeper rims; a better grade, without slits; floats nearer to it"},
	{"Sag of", "deeper joists or rims, or floats closer to each other"},
	{"Give of", "joists closer to each other or deeper; a float nearer"},
	{"Room for", "marks and sizes as the lines above have them"},
	{"Floats kept", "stops or blocks at the floats' ends and sides, or ties"},
	{"Push that spreads", "blocking, or a strap across the bay"},
	{"Boards that must", "more boards on before the ice goes, or stronger screws"},
	{"Situations in which", "a wider dock, or floats farther out and at the corners"},
	{"Joist", "hangers or angles with more in them, longer fasteners, or bolts right through"},
	{"Coating", "fasteners and brackets of the coating that the rule names"},
	{"Hangers or angles", "fasteners of the same metal as the bracket"},
	{"Tie", "a stronger tie, more parts, or more ties"},
	{"What that tie", "a stronger lip, hole or eye, or the pull on more of them"},
	{"Nails at", "longer or more nails, or blocks at both ends of each float"},
	{"Screws of a board", "longer or more screws"},
	{"What was in it", "other drums"},
	{"Leak test", "each closed and held under water, before it is built in"},
	{"Bungs", "the drums turned until their bungs lie level at the sides"},
	{"Suction", "bungs closed on a colder day"},
	{"Pressure", "bungs closed on a warmer day"},
	{"Longest board", "longer stock, or a splice that somebody answers for"},
	{"Pieces without", "more boards on the list"},
	{"Cost of", "a larger budget, or a smaller dock"},
	{"Line", "stronger or longer lines, or more of them; other anchors"},
	{"Lowest level", "lines longer where they are taut there, shorter or with a weight where they hang slack"},
	{"Highest level", "lines longer where they are taut there, shorter or with a weight where they hang slack"},
	{"Depth", "deeper water, or floats that lie less deep"},
	{"Hinge", "more or thicker pins, farther apart"},
	{"Ramp", "a longer ramp"},
	{"Hauling", "more parts in the tackle, a stronger line or anchor"},
	{"Fender", "a softer fender with more way, or slower boats"},
	{"Ladders", "a ladder"},
	{"Ice under the finished dock", "thicker ice, another place, a shorter stay; less snow to come where the ice all around is kept clear of it: never a risk"},
	{"Ice", "another winter's day, another place, a lighter load, less time: never a risk"},
	{"Time left", "more of the work ashore, or another winter"},
	{"Time it is planned", "planned for the whole stay, until a late ice-out"},
	{"Reach", "a shorter dock, or another place"},
	{"Area", "a smaller dock"},
	{"Setback", "another place"},
	{"Kinds of floats", "floats that the rule accepts"},
	{"Mains", "no electricity on the dock"},
	{"Permits", "each office asked"},
}

// mend adds to what is short how it is mended.
func mend(checks []measure.Check) {
	for i := range checks {
		c := &checks[i]
		if c.Verdict() != measure.Short {
			continue
		}
		for _, r := range remedies {
			if strings.HasPrefix(c.Name, r.begin) {
				c.Notes = append(append([]string(nil), c.Notes...), "usual ways out: "+r.say)
				break
			}
		}
	}
}
