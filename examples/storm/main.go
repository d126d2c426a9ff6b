// Storm answers one question of an invented dock, 8 ft x 16 ft on four lines in
// 12 ft of water: do they hold in a storm, and do they still with the lake two feet
// down in August?
//
//	storm -wind "25 mph" -down "2 ft"
package main

import (
	"flag"
	"fmt"
	"io"
	"math"
	"os"

	"example.org/floewright/lumber/measure"
)

const (
	ft    = measure.Foot
	depth = 12 * ft // of the water in spring
	draft = 1 * ft
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("storm", flag.ContinueOnError)
	flags.SetOutput(errs)
	wind := flags.String("wind", "25 mph", "the wind, mean over an hour, 33 ft up")
	down := flags.String("down", "2 ft", "how far the lake falls by August")
	if flags.Parse(args) != nil {
		return 2
	}
	var speed, fall float64
	for _, f := range []struct {
		kind measure.Kind
		text string
		to   *float64
	}{{measure.Speed, *wind, &speed}, {measure.Length, *down, &fall}} {
		x, err := f.kind.Parse(f.text)
		if err != nil {
			fmt.Fprintln(errs, "storm:", measure.RestateError(err, measure.US))
			return 2
		}
		*f.to = x
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: math.Inf(1)}).Check("down", fall); err != nil {
		fmt.Fprintln(errs, "storm:", measure.RestateError(err, measure.US))
		return 2
	}
	if err := report(out, speed, fall); err != nil {
		fmt.Fprintln(errs, "storm:", measure.RestateError(err, measure.US))
		return 2
	}
	return 0
}
