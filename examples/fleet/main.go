// Fleet invents ten thousand docks on drums, no two alike, judges each by four rules on
// all cores, and prints which share of each width holds. The table is the same however
// many workers there are.
//
//	fleet -docks 10000 -workers 4 -time
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

func run(ctx context.Context, args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("fleet", flag.ContinueOnError)
	flags.SetOutput(errs)
	docks := flags.Int("docks", 10000, "to invent")
	workers := flags.Int("workers", runtime.GOMAXPROCS(0), "at once")
	seed := flags.Uint64("seed", 1, "of what is invented")
	timed := flags.Bool("time", false, "tell how long one dock took")
	if flags.Parse(args) != nil {
		return 2
	}
	if *docks < 1 || *workers < 1 {
		fmt.Fprintln(errs, "fleet: at least one dock and one worker")
		return 2
	}
	began := time.Now()
	judged, err := survey(ctx, *seed, *docks, *workers)
	if err != nil {
		fmt.Fprintln(errs, "fleet:", err)
		return 1
	}
	if *timed {
		fmt.Fprintf(errs, "%v a dock\n", (time.Since(began) / time.Duration(*docks)).Round(time.Microsecond))
	}
	table(out, judged)
	return 0
}
