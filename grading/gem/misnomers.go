package gem

// Misnomer looks a name up among those that mislead alone; ok is false for
// every other name, known or not. It is quick, since it looks for no near names,
// and so fit to go through a text word by word.
func (t *Table) Misnomer(name string) (wrong *MisnomerError, ok bool) {
	m, ok := t.misnomers[fold(name)]
	if !ok {
		return nil, false
	}
	return &MisnomerError{name, m.proper, m.reason}, true
}
