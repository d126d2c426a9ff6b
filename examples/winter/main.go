// Winter reads a table of daily temperatures and prints the season of ice so far, the
// odds from the winters before, and the calendar of the work, of the winter in which it is
// asked: today, or the day of -now. Without a table it takes an embedded one, which is
// invented, and asks on the day after its last.
//
//	winter -temps shore.csv -latitude 46 -depth "9 m" -carry "8 in" -stand "16 in"
package main

import (
	"bytes"
	_ "embed"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

//go:embed invented.csv
var invented string

// today is the day on which a table of one's own is asked.
var today = time.Now

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("winter", flag.ContinueOnError)
	flags.SetOutput(errs)
	temps := flags.String("temps", "", "table of days: date,temp or date,high,low, °C")
	asked := flags.String("now", "", "day of asking, such as 2027-01-21; today's where it is left out")
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
	if err != nil {
		fmt.Fprintln(errs, "winter:", err)
		return 2
	}
	var now time.Time
	switch {
	case *asked != "":
		if now, err = time.Parse(time.DateOnly, *asked); err != nil {
			fmt.Fprintln(errs, "winter: -now: want a day such as 2027-01-21:", err)
			return 2
		}
	case *temps == "":
		now = record.Days[len(record.Days)-1].Date.AddDate(0, 0, 1)
	default:
		now = today()
	}
	a := asking{Lake: season.Lake{Latitude: *latitude, MeanDepth: sizes[0]}, carry: sizes[1], stand: sizes[2], now: time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, time.UTC)}
	var text bytes.Buffer // all of it or nothing
	if err = a.report(&text, record); err == nil {
		_, err = out.Write(text.Bytes())
	}
	if err != nil {
		fmt.Fprintln(errs, "winter:", measure.RestateError(err, measure.US))
		return 2
	}
	return 0
}
