/set mode runnel -command
/set prompt runnel "\njshell> " "   ...> "
/set truncation runnel 100000
/set format runnel pre "|  "
/set format runnel post "%n"
/set format runnel errorpre "|  "
/set format runnel errorpost "%n"
/set format runnel errorline "{post}{pre}    {err}"
/set format runnel err "%6$s"
/set format runnel errors "%5$s"
/set format runnel name "%1$s"
/set format runnel type "%2$s"
/set format runnel value "%3$s"
/set format runnel unresolved "%4$s"
/set format runnel action "created" added-primary
/set format runnel action "modified" modified-primary
/set format runnel action "replaced" replaced-primary
/set format runnel action "overwrote" overwrote-primary
/set format runnel action "dropped" dropped-primary
/set format runnel typeKind "class" class
/set format runnel typeKind "interface" interface
/set format runnel typeKind "enum" enum
/set format runnel typeKind "annotation interface" annotation
/set format runnel typeKind "record" record
/set format runnel resolve ", usable once{unresolved}{errors} is in order" defined,notdefined-added,modified,replaced,used
/set format runnel result "{name} ==> {value}{post}" added,modified,replaced-ok-primary
/set format runnel display "{pre}{action} {typeKind} {name}{resolve}{post}" class,interface,enum,annotation,record
/set format runnel display "{pre}{action} method {name}({type}){resolve}{post}" method
/set format runnel display "{pre}attempted to use {typeKind} {name}{resolve}{post}" used-class,interface,enum,annotation,record
/set format runnel display "{pre}attempted to call method {name}({type}){resolve}{post}" used-method
/set format runnel display "{pre}{action} variable {name}{resolve}{post}" vardecl,varinit-notdefined
/set format runnel display "{pre}{action} variable {name}{post}" dropped-vardecl,varinit,expression
/set format runnel display "{result}" added,modified,replaced-expression,varvalue,assignment,varinit,vardecl-ok-primary
/set format runnel display "" added,modified,replaced,overwrote,dropped-update
