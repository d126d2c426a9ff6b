package action

import (
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// Autumn returns what to do before the lake freezes and while it is frozen, in
// this library's words, with who says so.
func Autumn() []ice.Caution { return append([]ice.Caution(nil), autumn...) }

const handbook = "US Navy MIL-HDBK-1025/5"

var autumn = []ice.Caution{
	{Text: "take the dock out before freeze-up: public docks are, to spare the damage", Publisher: "Minnesota Department of Natural Resources, notice of 2008, as reported", Status: measure.Quoted},
	{Text: "let hinges, pins and lines follow the water, and give the lines more length as it falls", Publisher: "Ameren Missouri, December 2022, by KOMU", Status: measure.Quoted},
	{Text: "a frozen-in dock is damaged when the water falls from under the ice and it collapses", Publisher: "Ameren Missouri, December 2022, by KOMU", Status: measure.Quoted},
	{Text: "de-icers keep water open round a dock; they do not stop a moving sheet", Publisher: "Ameren Missouri, December 2022, by KOMU", Status: measure.Quoted},
	{Text: "warmer water, of 39 °F (4 °C), brought up from the bottom delays freezing; open water beside a shore is a danger to people and may need a permit: fence and mark it", Publisher: handbook + " for the water; common practice for the rest", Status: measure.Read},
	{Text: "drifting cakes of ice do the most harm; a boom of logs or heavy timbers turns them", Publisher: handbook, Status: measure.Read},
	{Text: "ice crushes floats; those with tapering or round bottoms are squeezed up instead", Publisher: handbook, Status: measure.Read},
	{Text: "ice grips rough piles and lifts them a step with each rise of the water, some by 5 ft (1.5 m) over the winters; a jacket of polyethylene lets it slip", Publisher: "US Army Corps of Engineers, CETN-III-17, revised November 1984", Status: measure.Read},
	{Text: "the uplift, not the summer, usually governs light docks on piles; thin piles feel less in all", Publisher: "L. J. Zabilansky, 14th IAHR ice symposium, 1998, abstract", Status: measure.Read},
	{Text: "take off the gangway, and undo what ties the dock stiffly to shore, pile or neighbour", Publisher: "no one publisher", Status: measure.CommonPractice},
	{Text: "slack every line before the lake freezes, mark both ends, and leave a length that the highest spring water does not take up", Publisher: "no one publisher", Status: measure.CommonPractice},
	{Text: "look at the water level each week; where it drifts off the frozen level by more than the first crack needs, free the lines", Publisher: "no one publisher", Status: measure.CommonPractice},
	{Text: "at break-up keep off the dock and the ice; a sheet moving in the wind cannot be held off by hand, and a loaded line kills when it parts", Publisher: "no one publisher", Status: measure.CommonPractice},
	{Text: "tow or haul the dock to a small bay or ashore if it must stay the winter: the less ice upwind, the less push", Publisher: "no one publisher", Status: measure.CommonPractice},
	{Text: "ask the lake's authority: some want docks out by a date, and work on the ice has rules of its own", Publisher: "no one publisher", Status: measure.CommonPractice},
}
