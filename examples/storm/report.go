package main

import (
	"fmt"
	"io"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// report surveys the dock at both levels, and without one line after another.
func report(out io.Writer, speed, fall float64) error {
	m, err := mooring()
	if err != nil {
		return err
	}
	weather := storm(speed, 0)
	if err := winds(out, weather.Wind); err != nil {
		return err
	}
	levels := []float64{0}
	for _, level := range []float64{0, -fall} {
		low := storm(speed, -level)
		trough := 0.0
		if low.Depth > draft {
			if trough, err = highest(low); err != nil {
				return err
			}
		}
		if !(low.Depth > draft+trough/2) {
			fmt.Fprintf(out, "Lake down %s: %s of water, and the dock draws %s, in waves of %s: aground. Nothing is known of its lines there.\n",
				length(-level), length(max(0, low.Depth)), length(draft), length(trough))
			continue
		}
		if level != 0 {
			levels = append(levels, level)
		}
		s, err := m.Survey([]float64{level}, low.Load, 72)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "Lake down %s: the dock moves up to %s.\n", length(-level), length(s.Offset))
		for _, part := range []string{"piece", "fitting", "ground"} {
			c := s.Worst(part)
			fmt.Fprintf(out, "  %s: %s: %v\n", c.Name, c.Numbers(measure.US), c.Verdict())
		}
		for _, n := range s.Notes {
			fmt.Fprintln(out, " ", n)
		}
	}
	losses, err := m.Losses(levels, weather.Load, 72) // in the waves of the deeper lake, which are higher
	if err != nil {
		return err
	}
	for _, s := range losses {
		if s.Err != nil {
			fmt.Fprintf(out, "Without %s: %v.\n", s.Lost, measure.RestateError(s.Err, measure.US))
			continue
		}
		c := s.Worst()
		fmt.Fprintf(out, "Without %s it moves up to %s; %s: %v.\n", s.Lost, length(s.Offset), c.Name, c.Verdict())
	}
	bands, err := m.Bands(-8*ft, 12*ft)
	if err != nil {
		return err
	}
	for _, b := range bands[:1] {
		fmt.Fprintf(out, "Lines: %v at %s down, %v above %s up.\n", b.Below, length(-b.Low), b.Above, length(b.High))
	}
	// What the fittings take of it, for the frame: the storm from astern.
	load, err := weather.Load(0)
	if err != nil {
		return err
	}
	p, err := m.Rest(0, load)
	if err != nil {
		return err
	}
	forces, err := m.Forces(p)
	if err != nil {
		return err
	}
	for _, f := range forces {
		fmt.Fprintf(out, "The cleat %s is pulled with %s along, %s across, %s down.\n",
			f.Name, force(math.Abs(f.X)), force(math.Abs(f.Y)), force(-f.Z))
	}
	fmt.Fprintln(out, "Invented dock, steady loads. Look at every line each spring; local rules and the owner of the lake bed decide.")
	return nil
}

// winds prints the wind and what stands beside it, and refuses one that is no storm.
func winds(out io.Writer, w moor.Wind) error {
	gust, err1 := w.To(10, 3)
	mean, err2 := w.To(10, 600)
	lake, err3 := moor.Usual("lake dock wind")
	breeze, err4 := moor.Usual("strong breeze")
	for _, err := range []error{err1, err2, err3, err4} {
		if err != nil {
			return err
		}
	}
	breeze.Hi = math.Inf(1)
	if err := breeze.Check("wind, as the mean of 10 minutes", mean.Speed); err != nil {
		return fmt.Errorf("no storm to check a mooring for: %w", err)
	}
	mph := func(x float64) string { return measure.Speed.Format(x, measure.US) }
	fmt.Fprintf(out, "Wind of %s, the mean over an hour, 33 ft over the water: %s in gusts of 3 s.\n", mph(w.Speed), mph(gust.Speed))
	if gust.Speed < lake.Lo {
		fmt.Fprintf(out, "  less than the %s that docks must stand on one lake (%v)\n", mph(lake.Lo), lake.Source)
	}
	return nil
}

// highest returns the waves that are highest of all directions, m.
func highest(w moor.Weather) (float64, error) {
	most := 0.0
	for i := range 16 {
		sea, err := w.Sea(2 * math.Pi * float64(i) / 16)
		if err != nil {
			return 0, err
		}
		most = max(most, sea.Height)
	}
	return most, nil
}

func length(x float64) string { return measure.Length.Format(math.Round(x/ft*10)/10*ft, measure.US) }

func force(x float64) string { return fmt.Sprintf("%.0f lbf", x/measure.PoundForce) }
