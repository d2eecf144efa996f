package main

import "os"

// machine is the name of this computer, for a register that several share.
func (p *program) machine() string {
	name, err := os.Hostname()
	if err != nil {
		return ""
	}
	return name
}
