package register

// chain proves the log.
func (a *auditor) chain(t *tx) error {
	var seq int64
	var prev Digest
	err := t.events(func(row eventRow) error {
		a.Events++
		e := row.event
		at := Finding{Kind: BrokenChain, Event: row.seq, Number: row.number}
		if row.seq != seq+1 {
			a.find(Finding{Kind: BrokenChain, Event: seq + 1}, "removed: the log goes on with event %d", row.seq)
		}
		switch {
		case row.unreadable != nil:
			a.broken[row.seq] = true
			a.find(at, "cannot be read: %v", row.unreadable)
		case row.hash != Sum(row.body):
			a.broken[row.seq] = true
			a.find(at, "changed after it was written: its hash is not that of its text")
		case row.seq == seq+1 && e.Prev != prev:
			a.find(at, "does not follow event %d: that was changed, or this one put in", seq)
		case e.Seq != row.seq || e.Number.String() != row.numberText || !e.At.Equal(row.at):
			a.find(at, "filed as another event, number or time than its text says")
		}
		if n, s, ok := e.change(); ok && !a.broken[row.seq] {
			a.changes[n] = s
		}
		seq, prev = row.seq, row.hash
		return nil
	})
	a.Head = prev
	return err
}
