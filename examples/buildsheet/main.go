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
//	buildsheet -explain            every field of a plan file, with -units si in metres
//
// Exit status: 0 everything holds, 1 something is short, 2 the plan cannot be used,
// 3 nothing is short, but something has no answer or turns on what nobody measured.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

func main() {
	debug.SetGCPercent(800) // it lives for a moment: memory costs less than its collection
	os.Exit(int(run(os.Args[1:], os.Stdout, os.Stderr)))
}

func run(args []string, out, errs io.Writer) dock.Status {
	fail := func(err error) dock.Status {
		fmt.Fprintln(errs, "buildsheet:", err)
		return dock.Unusable
	}
	o, err := options(args, errs)
	switch {
	case err != nil:
		return fail(err)
	case o == nil: // the flags have said so
		return dock.Unusable
	case o.explain:
		for _, e := range plan.Explain() {
			wrap(out, e.In(o.asked(measure.US)).String())
		}
		return dock.AllHold
	case o.start.wanted:
		if err := o.start.write(out, errs, o.units); err != nil {
			return fail(measure.RestateError(err, o.asked(measure.US)))
		}
		return dock.AllHold
	}
	d, err := o.dock()
	if err != nil {
		fmt.Fprintln(errs, err) // it names the file itself
		return dock.Unusable
	}
	tell := progress(errs)
	tell("checking")
	r, err := d.Report(context.Background(), o.asked(d.Units()))
	if err == nil && o.dir != "" {
		tell("drawing")
		err = write(o.dir, d, r, today())
	}
	tell("")
	if err != nil {
		return fail(fmt.Errorf("nothing was written: %w", err))
	}
	err = r.WriteText(out)
	if err == nil && o.dir != "" {
		_, err = fmt.Fprintf(out, "\nPages to print, pictures and lists are in %s: begin with sheet.html.\n", o.dir)
	}
	if err != nil {
		return fail(err)
	}
	return r.Status()
}
