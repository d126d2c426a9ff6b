// Drums answers one question: how many drums hold a dock of a length and width, with
// people at one edge and any one drum lost, and where do they go?
//
//	drums -length "16 ft" -width "8 ft" -dock "1100 lb" -people 3
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("drums", flag.ContinueOnError)
	flags.SetOutput(errs)
	length := flags.String("length", "16 ft", "of the deck")
	width := flags.String("width", "10 ft", "of the deck")
	mass := flags.String("dock", "1300 lb", "frame, deck and hardware, without drums")
	kind := flags.String("drum", "55 gal plastic, tight head", "preset")
	people := flags.Int("people", 3, "at any one edge, 185 lb each")
	if flags.Parse(args) != nil {
		return 2
	}
	fail := func(err error) int {
		fmt.Fprintln(errs, "drums:", measure.RestateError(err, measure.US))
		return 2
	}
	l, err1 := measure.Length.Parse(*length)
	w, err2 := measure.Length.Parse(*width)
	m, err3 := measure.Mass.Parse(*mass)
	drum, err4 := float.LookupDrum(*kind)
	for _, err := range []error{err1, err2, err3, err4} {
		if err != nil {
			return fail(err)
		}
	}
	const top = 9 * measure.Inch
	p := &float.Platform{
		Density: 998, Weights: []float.Weight{{Mass: m, At: r3.Vec{Z: top / 2}}},
		Corners: []r3.Vec{{X: -l / 2, Y: -w / 2, Z: top}, {X: l / 2, Y: -w / 2, Z: top}, {X: l / 2, Y: w / 2, Z: top}, {X: -l / 2, Y: w / 2, Z: top}},
	}
	rules, err := float.Rules(float.Deck{Depth: top}, "20 psf over the deck")
	if err != nil {
		return fail(err)
	}
	places := places(drum, l, w)
	c, err := p.Fewest(context.Background(), places, float.Demand{Load: rules, Crowd: float.Crowd{People: *people, Inset: 6 * measure.Inch}})
	if err != nil {
		return fail(err)
	}
	fmt.Fprintf(out, "%d drums of %d places; no choice of fewer than %d does", len(c.Places), len(places), c.Bound)
	fmt.Fprintf(out, "\nThe deck's lowest corner stays %s over the water with %d at the worst place of the edge.\n", measure.Length.Format(c.Margin, measure.US), *people)
	for _, i := range c.Places {
		at := places[i].At
		fmt.Fprintf(out, "  %s along, %s across\n", measure.Length.Format(at.X+l/2, measure.US), measure.Length.Format(at.Y+w/2, measure.US))
	}
	fmt.Fprintln(out, "Afloat and sound, or one of them lost. Not sealed, not a permit drawing.")
	return 0
}
