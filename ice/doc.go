// Package ice compares a survey of lake ice with the rules that public bodies
// print for loads on it. It says what those rules do not rule out, and never
// that anything may be done.
//
// # Model
//
// A [Sheet] is what was found: drilled [Hole]s, at least six, the four corners and the
// middle of the pad and one on the walk from the shore (see [Spot]), each at a place of
// its own, the corners round what stands there, the water, the
// season, the air of the five days right before, the age of the survey, cracks, wet
// places, inlets, and whether anything changed since. The smallest effective
// thickness of all holes governs. It is compared with the thickness required:
//
//	required = greatest of (rule by weight, rows for people and machines) × white ice × thaw × cracks × river
//
//	rule by weight   P = A h² with the strictest class that was read, 50 psi, and every public
//	                 table by weight that was read or quoted, next heavier row; or the [Class]
//	                 that the caller names
//	people           one 15 cm, two or three 20 cm, more 30 cm: the strictest rows read or quoted
//	white ice        2 where there is any, and only clear ice counts; or the caller's [Scheme]
//	thaw             3 after any of the four days before yesterday that reached 0 °C; see [Counted]
//	cracks           the load halved beside a crack, quartered where cracks cross: √2, 2
//	river            15 % off the load; unknown water counts as a river
//	a load that      2, from the first minute to 24 hours; for days and weeks see below
//	stands
//
// The factors are multiplied, the cautious reading where each source speaks of
// its own factor alone. Loads within the published distances, or within four
// characteristic lengths, count as one: [Other].
//
// # Verdicts
//
// A check is "short", "no answer" or "not ruled out by" the governing rule. It
// is never better than "no answer" on ice that is not fully measured, drilled at
// fewer places than that or at others, surveyed more than 24 hours ago or changed since,
// thawing (the newest day reached 0 °C, or a daily mean did), after a sudden
// drop of temperature, in spring, on a river, flooded, hanging above its water,
// lying deeper than it floats, under more snow than it floats, near inlets or wet places, or where any of
// this is unknown, however thick it is. It never improves when an input gets
// worse or becomes unknown, but where two of them contradict each other, so that one is
// wrong: ice that lies deeper than it floats, a gauge that stands lower than its ice lets it
// or that rises. It cannot know of the thin place where no hole
// was drilled. Zero values are the cautious ones: a zero of a [Hole] is not known
// unless it was looked for, nor is an age of 0.
//
// # Days and weeks
//
// A load that stands ([Stand]) sags by creep until water comes over the top. Two
// verdicts, neither of which ever serves for the other:
//
//	[Sheet.Flooding]   may the dock stay so long: soonest flood, softest ice
//	[Sheet.Beside]     may people stand beside it today: double the strictest rule for
//	                   all as one load, and freeboard left tomorrow
//
// The sag is that of the viscoelastic plate, by the correspondence principle
// with Sinha's creep law ([Creep]), and no less than the elastic plate with the
// secant modulus; the criterion, sag below freeboard and strain below 1e-3, is
// that of Frederking and Gold. Soft and stiff ice give a range of days, the soft
// end the verdict. The builder's own [Gauge], water read daily in a hole at the
// dock, needs no law and may only shorten it; where the water falls away from under the
// ice, or days of the last five are left out, there is no answer. [Cover] says what snow does to the
// freeboard, [Pad] what shovelling does, [MeltIn] how deep dark things melt in.
//
// # Moving loads and breakthrough
//
// [Wave] gives the speed of the slowest wave under the ice, [Sheet.Hauling] holds
// a load's speed against half of it and the published limits. [Breakthrough]
// tells the first crack from the broken wedges; it is no check.
//
// # Limits and what has no answer
//
// Growth and decay, the thrust and uplift of ice on a dock (package action), sea ice, ice grounded
// at the shore, and how traffic repeated on one track tires the ice, on which
// sources differ (the number of passes does not matter: Northwest Territories,
// Hansard, 29 February 2000; fatigue is among the causes of failure: Gold 1971).
//
// # Assumptions on water level and snow
//
// The level in a hole tells whether the sheet floats freely: at the top of the
// ice it is flooded; deeper than 12.5 % of the clear ice (density of slush ice)
// plus 20 mm, it hangs; 20 mm nearer to the top than clear ice and its snow let it, beyond
// the sag under what stands there, it is pressed down or thinner than it was read. Snow that was not weighed counts as 400 kg/m³ against the
// freeboard of clear ice (917 kg/m³). Those allowances are our choice.
//
// # Plate
//
// A [Plate] on water gives deflection and moments at any point under circular
// and rectangular [Patch]es: the closed form for circles, integrals along the
// edges for rectangles, and their sum. It is thin, elastic, of even thickness
// and far from any edge or crack, for which see [Plate.Edge] and [Cracks.Share];
// stresses under patches smaller than 1.724
// thicknesses use Westergaard's fictitious radius, circles only. The numbers agree
// with independent integration to ten digits; what limits them is the modulus of
// the ice, unknown within a factor of five and falling with time.
//
// # Sources
//
// L. W. Gold 1971 for the form and the spread of P = A h²; the public tables in
// [Tables], each row as printed with its status; [Classes], [Thaws] and
// [Cautions] with theirs. What is from memory is marked and decides nothing
// unless the caller names it, but for the creep law under a load that stands and
// the theory of waves under a haul: no other was found, and their checks say so.
//
// Ice kills. Local authorities, people who know this ice, permits and licensed
// practice come before any number printed here.
//
// # Example
//
//	sheet := ice.Sheet{
//		Water: ice.Lake, Season: ice.Winter, Age: 2 * 3600, // s since it was drilled
//		Holes: []ice.Hole{{Name: "pad, middle", Clear: 0.28, Water: 0.02}}, // m
//	}
//	check, err := sheet.Crossing(ice.Crossing{Mass: 84, People: 1}) // kg
//	if err != nil {
//		return err
//	}
//	fmt.Println(check.Words()) // no answer: five more holes are missing, and what else was found
package ice
