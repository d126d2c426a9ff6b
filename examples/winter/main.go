// Winter reads a table of daily temperatures and prints the season of ice so far, the
// odds from the winters before, and the calendar of the work. Without a table it takes
// an embedded one, which is invented.
//
//	winter -temps shore.csv -latitude 46 -depth "9 m" -carry "8 in" -stand "16 in"
package main

import (
	_ "embed"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

//go:embed invented.csv
var invented string

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("winter", flag.ContinueOnError)
	flags.SetOutput(errs)
	temps := flags.String("temps", "", "table of days: date,temp or date,high,low, °C")
	latitude := flags.Float64("latitude", 46, "of the lake, degrees")
	depth := flags.String("depth", "9 m", "mean depth of the lake")
	carry := flags.String("carry", "8 in", "ice needed to carry pieces out")
	stand := flags.String("stand", "16 in", "ice needed to let the dock stand")
	if flags.Parse(args) != nil {
		return 2
	}
	var sizes [3]float64
	for i, text := range []string{*depth, *carry, *stand} {
		var err error
		if sizes[i], err = measure.Length.Parse(text); err != nil {
			fmt.Fprintln(errs, "winter:", measure.RestateError(err, measure.US))
			return 2
		}
	}
	name, table := "invented.csv", io.Reader(strings.NewReader(invented))
	if *temps != "" {
		f, err := os.Open(*temps)
		if err != nil {
			fmt.Fprintln(errs, "winter:", measure.RestateError(err, measure.US))
			return 2
		}
		defer f.Close()
		name, table = *temps, f
	}
	record, err := season.ReadCSV(name, table, season.Options{})
	if err == nil {
		err = report(out, record, season.Lake{Latitude: *latitude, MeanDepth: sizes[0]}, sizes[1], sizes[2])
	}
	if err != nil {
		fmt.Fprintln(errs, "winter:", measure.RestateError(err, measure.US))
		return 2
	}
	return 0
}
