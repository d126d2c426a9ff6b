// Notebook follows one question from top to bottom, as one does with a pencil: a swim
// dock of 16 ft by 10 ft, invented; which joists, how many drums, does the rim hold over
// them, what do the rules ask of the ice it is built on, and when was there so much?
package main

import (
	"context"
	"fmt"
	"io"
	"os"

	"example.org/floewright/float"
	"example.org/floewright/frame"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

func main() { explore(os.Stdout) }

func explore(out io.Writer) {
	say := func(format string, a ...any) { fmt.Fprintf(out, format+"\n", a...) }
	feet, pounds := printer(measure.Length), printer(measure.Mass)

	say("1. WHICH JOISTS SPAN %s EVERY %s?", feet(width), feet(spacing))
	var joist lumber.Member
	for _, size := range []string{"2x6", "2x8", "2x10", "2x12"} {
		joist = lumber.Member{Section: must(lumber.Size(size)), Length: width, Repetitive: true}
		joist.Grade = must(lumber.Lookup("Southern Pine", "No.2", joist.Section))
		span, check, err := joist.Span(spacing, dead, live)
		must(span, err)
		say("   %-5s spans %s: %s", size, feet(span), check.Words())
		if check.Verdict() == measure.Holds {
			break
		}
	}

	say("2. WHAT DOES THE FRAME WEIGH, WET?")
	rim := lumber.Member{Section: must(lumber.Size("2x10")), Length: length, Unbraced: spacing, Plies: 2}
	rim.Grade = must(lumber.Lookup("Southern Pine", "No.2", rim.Section))
	board := lumber.Member{Section: must(lumber.Size("2x6")), Length: length}
	board.Grade = must(lumber.Lookup("Southern Pine", "No.2", board.Section))
	joists := len(must(lumber.JoistLines(length, spacing, joist.Section.Width)))
	boards := int(width / board.Section.Depth)
	mass := float64(joists)*must(joist.Weights()).Damp + 2*must(rim.Weights()).Damp + float64(boards)*must(board.Weights()).Damp
	say("   %d joists, 2 rims, %d boards: %s", joists, boards, pounds(mass))

	say("3. HOW MANY DRUMS?")
	drum := must(float.LookupDrum("55 gal plastic, tight head"))
	dock := raft(mass, joist.Section.Depth)
	places := rows(drum)
	dry := must(float.LookupCriterion("deck edge dry")).Rule(float.Deck{}, must(float.LookupCriterion("20 psf over the deck")))
	choice := must(dock.Fewest(context.Background(), places, float.Demand{Load: []float.Rule{dry}, Crowd: float.Crowd{People: crew, Inset: 6 * measure.Inch}}))
	say("   %d of %d places; with %d people at the worst edge the lowest corner stays %s over the water", len(choice.Places), len(places), crew, feet(choice.Margin))
	rest := must(choice.Platform.Settle())
	say("   nobody aboard: tilt %s, lowest drum %s deep", measure.Angle.Format(rest.Tilt(), measure.US), feet(must(rest.Draft())))

	say("4. DOES A RIM HOLD, ALONE OVER ITS OWN DRUMS?")
	beam := frame.Beam{Length: length, EI: must(rim.Adjusted(lumber.TenYears)).E.Value * rim.Whole().Inertia()}
	for _, u := range choice.Platform.Units {
		if u.At.Y > 0 { // this rim's row
			beam.Rests = append(beam.Rests, frame.Rest{At: u.At.X + length/2, Support: must(u.Support(choice.Platform.Density))})
		}
	}
	beam.Loads = []frame.Load{frame.Uniform(0, length, mass/2*measure.Gravity/length), frame.Point(0, crew*person*measure.Gravity)}
	line := must(beam.Solve())
	most := line.Extremes()
	moment := max(most.Sag.Moment, -most.Hog.Moment)
	say("   %d people at its end: %s, and one drum pushes with %s", crew, measure.Moment.Format(moment, measure.US), measure.Force.Format(line.Push[0], measure.US))
	for _, c := range must(rim.Check(lumber.Demand{Moment: moment, Shear: max(most.Shear.Shear, -most.Shear.Shear)}, lumber.TenYears)) {
		say("   %s", c.Format(measure.US))
	}

	onIce(say, mass, rim)
	say("Everything here is invented. Local codes and permits come first. Not sealed, not a permit drawing.")
}
