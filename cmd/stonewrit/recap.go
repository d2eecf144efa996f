package main

// said counts what a run has written, so that its end can repeat what is no
// longer to be seen.
type said struct {
	lines  int    // written to standard output and standard error
	errors int    // told
	first  string // of the errors
	at     int    // lines before it
}

// screen is how many lines a terminal shows at least (common practice, no source).
const screen = 24

// message notes a message that was told.
func (s *said) message(severity, text string) {
	if severity == "error" {
		if s.errors == 0 {
			s.first, s.at = text, s.lines
		}
		s.errors++
	}
	s.lines++
}

// counted tells at the end of a long run what it came to.
func (p *program) counted(format string, args ...any) {
	if p.said.lines > screen {
		p.note(format, args...)
	}
}

// recap repeats the first of several errors where it is no longer on the screen:
// it is often the cause of the others.
func (p *program) recap() {
	if s := p.said; s.errors > 1 && s.lines-s.at > screen {
		p.note("%d errors; the first: %s", s.errors, s.first)
	}
}
