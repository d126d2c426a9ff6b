// Buildsheet prints what Floewright can say of one dock: its weights, how it
// floats empty, loaded and crowded, its worst joist, and the ice it is built on.
//
//	buildsheet                     the embedded swim platform
//	buildsheet -demo work          the other embedded plan
//	buildsheet -plan FILE          your own
//	buildsheet -units us|si        in other units than the plan's
//	buildsheet -out DIR            pages to print, pictures and lists as well
//	buildsheet -winters FILE       with the odds of past winters' temperatures
//	buildsheet -new -length "24 ft" -width "10 ft"    a plan to start from
//	buildsheet -explain            every field of a plan file
//
// Exit status: 0 everything holds, 1 something is short, 2 the plan cannot be
// used, 3 something has no answer and nothing is short.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

func main() {
	debug.SetGCPercent(800) // it lives for a moment: memory costs less than its collection
	os.Exit(int(run(os.Args[1:], os.Stdout, os.Stderr)))
}

func run(args []string, out, errs io.Writer) dock.Status {
	flags := flag.NewFlagSet("buildsheet", flag.ContinueOnError)
	flags.SetOutput(errs)
	file := flags.String("plan", "", "plan `file` to read")
	demo := flags.String("demo", "swim", "embedded plan to use without -plan: "+strings.Join(plan.Demos(), " or "))
	units := flags.String("units", "", "us or si; the plan's own if not given")
	dir := flags.String("out", "", "`folder` to write pages, pictures, lists and the report as JSON into, all or none")
	temps := flags.String("winters", "", "table of daily temperatures of past winters, `file` with date,temp or date,high,low in °C")
	begin := starting(flags)
	explain := flags.Bool("explain", false, "print every field of a plan file and stop")
	if err := flags.Parse(args); err != nil {
		return dock.Unusable
	}
	if flags.NArg() > 0 || *units != "" && *units != "us" && *units != "si" {
		fmt.Fprintln(errs, "buildsheet: -units is us or si, and a plan file is named with -plan")
		return dock.Unusable
	}
	if *explain {
		for _, e := range plan.Explain() {
			wrap(out, e.String())
		}
		return dock.AllHold
	}
	if begin.wanted {
		if err := begin.write(out, *units); err != nil {
			fmt.Fprintln(errs, "buildsheet:", err)
			return dock.Unusable
		}
		return dock.AllHold
	}
	d, err := read(*file, *demo)
	if err != nil {
		fmt.Fprintln(errs, err)
		return dock.Unusable
	}
	if *temps != "" {
		if d, err = remember(d, *temps); err != nil {
			fmt.Fprintln(errs, err)
			return dock.Unusable
		}
	}
	system := d.Units()
	switch *units {
	case "us":
		system = measure.US
	case "si":
		system = measure.SI
	}
	tell := progress(errs)
	tell("checking")
	r := d.Report(system)
	if *dir != "" {
		tell("drawing")
		if err := write(*dir, d, r, today()); err != nil {
			tell("")
			fmt.Fprintln(errs, "buildsheet: nothing was written:", err)
			return dock.Unusable
		}
	}
	tell("")
	if err := r.WriteText(out); err != nil {
		fmt.Fprintln(errs, "buildsheet:", err)
		return dock.Unusable
	}
	return r.Status()
}
