package lumber

import "math/bits"

// A state is what is left to cut and to cut it from, as one number of mixed
// radix: a board is subtracted from it whole.
type state struct{ hi, lo uint64 }

func (s state) minus(t state) state {
	lo, borrow := bits.Sub64(s.lo, t.lo, 0)
	hi, _ := bits.Sub64(s.hi, t.hi, borrow)
	return state{hi, lo}
}

// times returns n of a state, and whether they fit.
func (s state) times(n uint64) (state, bool) {
	over, hi := bits.Mul64(s.hi, n)
	carry, lo := bits.Mul64(s.lo, n)
	hi, c := bits.Add64(hi, carry, 0)
	return state{hi, lo}, over == 0 && c == 0
}

func (s state) plus(t state) state {
	lo, carry := bits.Add64(s.lo, t.lo, 0)
	hi, _ := bits.Add64(s.hi, t.hi, carry)
	return state{hi, lo}
}

// A cutMemo remembers what was spent at least on reaching a state: an open table
// that is emptied by counting up its generation.
type cutMemo struct {
	slots []memoSlot
	used  int
	now   uint32
}

type memoSlot struct {
	key   state
	spent int64
	when  uint32
}

func (m *cutMemo) clear() {
	m.used = 0
	m.now++
	if m.slots == nil {
		m.slots = make([]memoSlot, 1<<10)
	}
}

func (k state) hash() uint64 {
	h := (k.lo ^ k.hi*0x9e3779b97f4a7c15) * 0xd6e8feb86659fd93
	h ^= h >> 32
	h *= 0xd6e8feb86659fd93
	return h ^ h>>29
}

// better reports whether a state was not reached as cheaply before, and if so
// remembers it.
func (m *cutMemo) better(k state, spent int64) bool {
	mask := uint64(len(m.slots) - 1)
	for i := k.hash() & mask; ; i = (i + 1) & mask {
		s := &m.slots[i]
		if s.when != m.now {
			*s = memoSlot{k, spent, m.now}
			if m.used++; 2*m.used > len(m.slots) {
				m.grow()
			}
			return true
		}
		if s.key == k {
			if s.spent <= spent {
				return false
			}
			s.spent = spent
			return true
		}
	}
}

func (m *cutMemo) grow() {
	old := m.slots
	m.slots = make([]memoSlot, 2*len(old))
	mask := uint64(len(m.slots) - 1)
	for _, s := range old {
		if s.when != m.now {
			continue
		}
		i := s.key.hash() & mask
		for m.slots[i].when == m.now {
			i = (i + 1) & mask
		}
		m.slots[i] = s
	}
}
