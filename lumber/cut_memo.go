package lumber

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
