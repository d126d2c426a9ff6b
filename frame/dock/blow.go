package dock

import (
	"fmt"

	"example.org/floewright/float/moor"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// reference is how winds are compared: at 10 m, as gusts of 3 s and as the mean of the
// 10 minutes that the Beaufort scale has.
const (
	windAt     = 10.0
	gustOver   = 3.0
	windScaled = 600.0
)

// blow tells the wind that the lines and the hinge are checked for, and what stands
// beside it: what one lake's guideline asks, where that is more. The error is for a wind
// that is no storm: what holds in less than a strong breeze has not been checked. Where
// the plan has no wind both are nil, since nothing is checked then.
func (d *Dock) blow() (told []string, calm error) {
	m := &d.plan.Mooring
	if (rests{on(m.Wind), on(m.WindMean), on(m.WindHeight)}).err() != nil {
		return nil, nil
	}
	wind := moor.Wind{Speed: m.Wind.Value, Averaging: m.WindMean.Value, Height: m.WindHeight.Value}
	gust, err := wind.To(windAt, gustOver)
	if err != nil {
		return nil, err
	}
	mean, err := wind.To(windAt, windScaled)
	if err != nil {
		return nil, err
	}
	lake, err := moor.Usual("lake dock wind")
	if err != nil {
		return nil, err
	}
	breeze, err := moor.Usual("strong breeze")
	if err != nil {
		return nil, err
	}
	speed := func(x float64) string { return measure.Speed.Format(x, d.system()) }
	often := "how often such a wind comes the plan does not say"
	if m.WindYears.Known == measure.Measured {
		often = fmt.Sprintf("such a wind comes once in %s, as the plan has it", several(m.WindYears.Value, "year"))
	}
	told = append(told, fmt.Sprintf("the storm: a wind of %s, the mean over %s, %s over the water, which is %s in gusts of 3 s at 10 m (33 ft); %s",
		speed(m.Wind.Value), m.WindMean.Text, measure.Length.Format(m.WindHeight.Value, d.system()), speed(gust.Speed), often))
	if gust.Speed < lake.Lo {
		told = append(told, fmt.Sprintf("that is less than the %s that docks and their anchorage must stand on one lake (%s): ask the lake's authority what yours must stand",
			speed(lake.Lo), lake.Source))
	}
	if !(mean.Speed >= breeze.Lo) {
		calm = &measure.Error{
			Field: m.Wind.Path, Text: m.Wind.Text, Class: measure.ErrRange, Why: "that is no storm to check a mooring for",
			Want: fmt.Sprintf("%s or more as the mean of 10 minutes at 10 m (33 ft), a strong breeze (%s), where this is %s", speed(breeze.Lo), breeze.Source, speed(mean.Speed)),
		}
	}
	return told, calm
}

// unless takes the answer of a check that holds in a wind that is no storm.
func unless(c measure.Check, calm error) measure.Check {
	if calm != nil && c.Verdict() == measure.Holds {
		c.Err = calm
	}
	return c
}

// aground refuses a lowest level at which the dock lies on the bottom: nothing is known
// there of how lines hold it.
func (d *Dock) aground(draft float64) error {
	site := &d.plan.Site
	if site.Depth.Value+site.LevelLow.Value > draft {
		return nil
	}
	return &measure.Error{
		Field: site.LevelLow.Path, Text: site.LevelLow.Text, Class: measure.ErrRange, Why: "the dock, which draws " + measure.Length.Format(draft, d.system()) + ", lies on the bottom there",
		Want: "water under it, from site.depth of " + measure.Length.Format(site.Depth.Value, d.system()) + " down",
	}
}

// usedDrum returns what the plan says that drums of a kind held, where it is something: they
// are then not new.
func (d *Dock) usedDrum(i int) (plan.Name, bool) {
	duty := d.drumOf(i)
	if duty == nil || duty.Held.Known != measure.Measured || duty.Held.Value == "nothing" {
		return plan.Name{}, false
	}
	return duty.Held, true
}
