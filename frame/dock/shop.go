package dock

import (
	"context"
	"sync"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// A Shop is what the garage and the way to the lake need: what is cut from which
// board, what is bought, what goes on the wood, and what is carried. Each part
// stands alone: what one of them lacks is in its own Err.
type Shop struct {
	Units   measure.System // of the texts
	Cutting Cutting
	Bill    Bill
	Joints  Schedule
	Finish  []Coat
	Carry   []Haul

	// CarrySources are whose the figures of Carry are: the weight that a person lifts and
	// the pull that one gives on slippery ground.
	CarrySources []*measure.Source
}

// A Schedule is what holds the dock together, as [Dock.Hardware] returns it.
type Schedule struct {
	Rows  []fasten.Row
	Items []fasten.Item // to buy, spares counted
	Err   error         // what is left out
}

// Shop returns what the garage needs: what is cut from which board, what that leaves to
// buy, the hardware, the coats on the wood, and what is carried to the lake by how many,
// by [Dock.Cutting], [lumber.Cut] and [fasten.Schedule]. The error is the context's.
func (d *Dock) Shop(ctx context.Context) (*Shop, error) {
	if d.plan == nil {
		d = build(&plan.Plan{})
	}
	c, err := d.Cutting(ctx)
	if err != nil {
		return nil, err
	}
	finish := d.finish()
	s := &Shop{Units: d.units, Cutting: *c, Bill: d.bill(c, finish), Finish: finish, Carry: d.carry(), CarrySources: []*measure.Source{srcLift, srcPull}}
	s.Joints.Rows, s.Joints.Items, s.Joints.Err = d.Hardware()
	return s, nil
}

// shopMemo keeps a dock's cutting by the units of its texts: several parts of a
// report ask for it.
type shopMemo struct {
	sync.Mutex
	cutting [measure.SI + 1]*Cutting
}
