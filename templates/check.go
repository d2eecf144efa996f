package templates

import (
	"fmt"
	"reflect"
	"strings"
	"text/template/parse"
)

// check finds what would fail when a sentence is said: a field that its data
// does not have, a function called with what it does not take, a list where one
// word is due. It follows the parse tree into every branch, so nothing depends
// on what a document happens to say.
func check(tree *parse.Tree, data any, known index, own map[string]any) []error {
	c := &checker{tree: tree, known: known, own: own, vars: []variable{{"$", reflect.TypeOf(data)}}}
	c.list(tree.Root, reflect.TypeOf(data))
	return c.errs
}

type variable struct {
	name string
	typ  reflect.Type // nil where it cannot be known
}

type checker struct {
	tree  *parse.Tree
	known index
	own   map[string]any // the functions of this package
	vars  []variable
	errs  []error
}

func (c *checker) fail(n parse.Node, format string, args ...any) {
	c.errs = append(c.errs, fmt.Errorf("%s: %s", where(c.tree, n), fmt.Sprintf(format, args...)))
}

func (c *checker) list(l *parse.ListNode, dot reflect.Type) {
	if l == nil {
		return
	}
	for _, n := range l.Nodes {
		c.node(n, dot)
	}
}

func (c *checker) node(n parse.Node, dot reflect.Type) {
	switch n := n.(type) {
	case *parse.ActionNode:
		t := c.pipe(n.Pipe, dot)
		if len(n.Pipe.Decl) == 0 && !printable(t) {
			c.fail(n, "%s is %s, which is no text to print", n.Pipe, kindOf(t))
		}
	case *parse.IfNode:
		c.branch(&n.BranchNode, dot, func(reflect.Type) reflect.Type { return dot })
	case *parse.WithNode:
		c.branch(&n.BranchNode, dot, func(t reflect.Type) reflect.Type { return t })
	case *parse.RangeNode:
		c.branch(&n.BranchNode, dot, func(t reflect.Type) reflect.Type { return c.element(n, t) })
	case *parse.TemplateNode:
		c.template(n, dot)
	case *parse.ListNode:
		c.list(n, dot)
	}
}

// branch checks an if, with or range; inner is the type of the dot inside it.
func (c *checker) branch(n *parse.BranchNode, dot reflect.Type, inner func(reflect.Type) reflect.Type) {
	mark := len(c.vars)
	t := c.pipe(n.Pipe, dot)
	in := inner(t)
	if n.NodeType == parse.NodeRange {
		c.rangeVars(n.Pipe, mark, in)
	}
	c.list(n.List, in)
	c.vars = c.vars[:mark]
	c.list(n.ElseList, dot)
}

// rangeVars gives the variables of a range their types: the last is the
// element, one before it the place.
func (c *checker) rangeVars(p *parse.PipeNode, mark int, element reflect.Type) {
	for i := range p.Decl {
		if i == len(p.Decl)-1 {
			c.vars[mark+i].typ = element
		} else {
			c.vars[mark+i].typ = reflect.TypeFor[int]()
		}
	}
}

func (c *checker) element(n parse.Node, t reflect.Type) reflect.Type {
	t = pointed(t)
	switch {
	case t == nil:
		return nil
	case t.Kind() == reflect.Slice || t.Kind() == reflect.Array:
		return t.Elem()
	}
	c.fail(n, "range needs a list, not %s", kindOf(t))
	return nil
}

func (c *checker) template(n *parse.TemplateNode, dot reflect.Type) {
	entry, ok := c.known.find(n.Name)
	if !ok {
		c.fail(n, "there is no sentence %q; %s", n.Name, c.known.nearest(n.Name))
		return
	}
	want := reflect.TypeOf(entry.data)
	if n.Pipe == nil {
		if want != reflect.TypeFor[None]() {
			c.fail(n, "the sentence %q needs its %s", n.Name, kindOf(want))
		}
		return
	}
	if got := c.pipe(n.Pipe, dot); got != nil && pointed(got) != want && want != reflect.TypeFor[None]() {
		c.fail(n, "the sentence %q takes %s, not %s", n.Name, kindOf(want), kindOf(got))
	}
}

// pipe is the type that a pipeline gives.
func (c *checker) pipe(p *parse.PipeNode, dot reflect.Type) reflect.Type {
	if p == nil {
		return nil
	}
	var t reflect.Type
	for i, cmd := range p.Cmds {
		t = c.command(cmd, dot, t, i > 0)
	}
	for _, v := range p.Decl {
		if p.IsAssign {
			continue
		}
		c.vars = append(c.vars, variable{v.Ident[0], t})
	}
	return t
}

// command is the type of one command; piped is what comes down the pipe.
func (c *checker) command(cmd *parse.CommandNode, dot, piped reflect.Type, hasPiped bool) reflect.Type {
	if f, ok := cmd.Args[0].(*parse.IdentifierNode); ok {
		args := make([]argument, 0, len(cmd.Args))
		for _, a := range cmd.Args[1:] {
			args = append(args, argument{c.value(a, dot), a})
		}
		if hasPiped {
			args = append(args, argument{piped, cmd})
		}
		return c.call(f, args)
	}
	t := c.value(cmd.Args[0], dot)
	if len(cmd.Args) > 1 || hasPiped {
		c.fail(cmd, "%s takes nothing behind it", cmd.Args[0])
	}
	return t
}

// value is the type of one operand.
func (c *checker) value(n parse.Node, dot reflect.Type) reflect.Type {
	switch n := n.(type) {
	case *parse.DotNode:
		return dot
	case *parse.FieldNode:
		return c.fields(n, dot, n.Ident)
	case *parse.ChainNode:
		return c.fields(n, c.value(n.Node, dot), n.Field)
	case *parse.VariableNode:
		for i := len(c.vars) - 1; i >= 0; i-- {
			if c.vars[i].name == n.Ident[0] {
				return c.fields(n, c.vars[i].typ, n.Ident[1:])
			}
		}
		return nil
	case *parse.PipeNode:
		return c.pipe(n, dot)
	case *parse.IdentifierNode:
		return c.call(n, nil)
	case *parse.StringNode:
		return reflect.TypeFor[string]()
	case *parse.BoolNode:
		return reflect.TypeFor[bool]()
	case *parse.NumberNode:
		return reflect.TypeFor[int]()
	}
	return nil
}

// fields follows field names into structs.
func (c *checker) fields(n parse.Node, t reflect.Type, names []string) reflect.Type {
	for _, name := range names {
		t = pointed(t)
		if t == nil {
			return nil
		}
		if t.Kind() != reflect.Struct {
			c.fail(n, "%s is not there: %s has no fields", name, kindOf(t))
			return nil
		}
		f, ok := t.FieldByName(name)
		if !ok || !f.IsExported() {
			c.fail(n, "there is no field %s, only %s", name, strings.Join(fieldNames(t), ", "))
			return nil
		}
		t = f.Type
	}
	return t
}

func fieldNames(t reflect.Type) []string {
	var names []string
	for i := range t.NumField() {
		names = append(names, "."+t.Field(i).Name)
	}
	if len(names) == 0 {
		return []string{"none at all"}
	}
	return names
}

func pointed(t reflect.Type) reflect.Type {
	if t != nil && t.Kind() == reflect.Pointer {
		return t.Elem()
	}
	return t
}

func printable(t reflect.Type) bool {
	if t == nil {
		return true
	}
	switch t.Kind() {
	case reflect.String, reflect.Int:
		return true
	}
	return false
}

// kindOf names a type as the author of a template knows it.
func kindOf(t reflect.Type) string {
	switch t = pointed(t); {
	case t == nil:
		return "nothing"
	case t.Kind() == reflect.Slice:
		return "a list"
	case t.Kind() == reflect.Bool:
		return "yes or no"
	case t.Kind() == reflect.Int:
		return "a number"
	case t.Kind() == reflect.String:
		return "a text"
	}
	return "the struct " + t.Name()
}
