package dock_test

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// An impatient context ends when it was asked a number of times whether it has.
type impatient struct {
	context.Context
	left atomic.Int64
}

func (c *impatient) Err() error {
	if c.left.Add(-1) < 0 {
		return context.Canceled
	}
	return nil
}

// TestReportEnds: wherever its context ends, a report is whole or none, with the
// context's error, and the dock gives the same one afterwards.
func TestReportEnds(t *testing.T) {
	if r, err := new(dock.Dock).Report(ended(), measure.US); r != nil || !errors.Is(err, context.Canceled) {
		t.Errorf("a dock of nothing under a context that ended: %v, %v", r, err)
	}
	d, err := dock.Read("swim.json", strings.NewReader(demoText(t, "swim")))
	if err != nil {
		t.Fatal(err)
	}
	want, whole, broken := "", 0, 0
	for _, asked := range []int64{1 << 40, 3000, 1000, 400, 170, 90, 40, 18, 17, 5, 0} {
		c := &impatient{Context: context.Background()}
		c.left.Store(asked)
		r, err := d.Report(c, d.Units())
		switch {
		case err == nil && r != nil:
			whole++
			if got := text(t, r); want == "" {
				want = got
			} else if got != want {
				t.Fatalf("asked %d times: another report", asked)
			}
		case r != nil || !errors.Is(err, context.Canceled):
			t.Fatalf("asked %d times: %v, %v", asked, r, err)
		default:
			broken++
		}
	}
	if whole == 0 || broken < 3 {
		t.Errorf("%d reports were whole, %d broken off", whole, broken)
	}
	if got := text(t, reported(t, d, d.Units())); got != want {
		t.Error("broken off reports change the next one")
	}
}

// TestShared: goroutines that share a dock get what each would get alone.
func TestShared(t *testing.T) {
	d, err := dock.Read("work.json", strings.NewReader(demoText(t, "work")))
	if err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	var out [3]bytes.Buffer
	var errs [3]error
	for i := range out {
		wait.Go(func() {
			r, err := d.Report(context.Background(), measure.System(i%2))
			if err != nil {
				errs[i] = err
				return
			}
			errs[i] = r.WriteText(&out[i])
		})
	}
	wait.Wait()
	if err := errors.Join(errs[:]...); err != nil {
		t.Fatal(err)
	}
	if out[0].Len() == 0 || out[0].String() != out[2].String() || out[0].String() == out[1].String() {
		t.Error("reports of the same dock differ, or those in other units do not")
	}
	if alone := text(t, reported(t, d, measure.System(0))); alone != out[0].String() {
		t.Error("alone it is another")
	}
}

func ended() context.Context {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	return ctx
}
