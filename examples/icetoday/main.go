// Icetoday answers one question: what do public rules say of a sheet of ice that was
// drilled today? It never clears anybody onto the ice.
//
//	icetoday -thinnest "7 in" -white "1 in" -load "400 lb" -people 2
package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("icetoday", flag.ContinueOnError)
	flags.SetOutput(errs)
	clear := flags.String("thinnest", "7 in", "clear ice in the thinnest of six holes and more, drilled today")
	white := flags.String("white", "0 in", "white ice over it")
	load := flags.String("load", "185 lb", "everything on one spot: people, sled, piece")
	people := flags.Int("people", 1, "people among it")
	if flags.Parse(args) != nil {
		return 2
	}
	fail := func(err error) int {
		fmt.Fprintln(errs, "icetoday:", measure.RestateError(err, measure.US))
		return 2
	}
	var x [3]float64
	for i, f := range []struct {
		kind measure.Kind
		text string
	}{{measure.Length, *clear}, {measure.Length, *white}, {measure.Mass, *load}} {
		var err error
		if x[i], err = f.kind.Parse(f.text); err != nil {
			return fail(err)
		}
	}
	// Sound as can be: what of this is not so makes the answer worse.
	s := ice.Sheet{Age: 3600, Water: ice.Lake, Season: ice.Winter, Cracks: ice.NoCracks, Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound}
	for range 5 {
		s.Air = append(s.Air, ice.Air{High: -5, Low: -15})
	}
	for i, at := range []string{"pad, north-west corner", "pad, north-east corner", "pad, south-east corner", "pad, south-west corner", "pad, middle", "walk from shore"} {
		place := [][2]float64{{-4, 3}, {4, 3}, {4, -3}, {-4, -3}, {0, 0}, {0, -20}}[i] // m
		s.Holes = append(s.Holes, ice.Hole{
			Name: at, X: place[0], Y: place[1],
			Clear: x[0], White: x[1], Water: 0.08 * x[0], Looked: true,
		})
	}
	c, err := s.Crossing(ice.Crossing{Mass: x[2], People: *people})
	if err != nil {
		return fail(err)
	}
	fmt.Fprintf(out, "An invented sheet: six holes of %s clear ice and %s white, as sound as can be.\n", *clear, *white)
	fmt.Fprintf(out, "%s: %s\n  %s\n", *load, c.Words(), c.Numbers(measure.US))
	if c.Err != nil {
		fmt.Fprintln(out, "  why:", measure.RestateError(c.Err, measure.US))
	}
	fmt.Fprintln(out, "Held: five days of hard frost, a lake, winter, no crack, no water on it, nothing near that eats ice. Is that so today?")
	fmt.Fprintln(out, "No clearance. Drill, measure, ask who knows this ice, and turn back when in doubt.")
	return 0
}
