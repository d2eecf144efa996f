package gem

// Rules returns the facts that the name of a variety needs besides its
// species; none for a name that needs nothing more.
func (t *Table) Rules(variety *Material) []Rule {
	return append([]Rule(nil), t.rules[variety.Name]...)
}

// CareFor returns how m is kept and cleaned. A material without a row gets
// "no" throughout: nobody should put a stone into a bath for want of a figure.
func (t *Table) CareFor(m *Material) Care {
	if m.Care != (Care{}) {
		return m.Care
	}
	return Care{
		Ultrasonic: "no", Steam: "no", Heat: "no", Solvents: "no", Light: "no", Knocks: "no",
		Note: "the table has no row for this material", Source: CommonPractice,
	}
}
