/*
 * The panel language. README.md beside this file teaches it; this file is exact about the form of a line.
 *
 * A file is cut into lines first (a line goes on while a bracket is open and after a trailing '->', '|' or ','), and
 * each line is given to the rule below that its first words call for. So a mistake spoils one line and no more, every
 * word of the language stays free as a tag, and no rule needs to look further ahead than two tokens.
 */
grammar Panel;

// ---- The header ----------------------------------------------------------------------------------------------------

panelName : ( 'panel' | 'site' ) TEXT EOF ;
drawing   : 'drawing' label ( 'revision' name )? EOF ;
rules     : 'rules' name EOF ;
system    : 'system' atom+ EOF ;

// ---- Other files: kinds, or the panels of a site, each under its tag ------------------------------------------------

include : 'include' TEXT ( 'as' name ( COMMA name )* )? EOF ;

// ---- What there is: kind, tags and ratings are told apart by their spelling, once the row is read ------------------

declaration : name atom* EOF ;
atom        : name | TEXT | COMMA | BAR | PERCENT ;

// ---- How it is wired -----------------------------------------------------------------------------------------------

chain     : step ( ARROW step )+ EOF ;
rung      : 'rung' name step ( ARROW step )+ EOF ;
step      : ref | group ;
group     : LPAREN branch ( BAR branch )* RPAREN ;
branch    : step ( ARROW step )* ;
ref       : name refWord* terminals? ;
terminals : TERMINAL | list ;

wire        : 'wire' name COLON ref ( COMMA ref )* EOF ;
untraced    : 'untraced' refs ( 'because' TEXT )? EOF ;
seen        : 'seen' refs EOF ;
fromDrawing : 'from' 'the' 'drawing' refs EOF ;
refs        : ref ( ( COMMA | 'and' ) ref )* ;

// ---- What it is meant to do ----------------------------------------------------------------------------------------

never : 'never' condition ( COMMA? settled )? ( COMMA? failures )? EOF ;
dead  : 'dead' place 'when' condition ( COMMA? failures )? EOF ;
stops : 'stops' what=place 'by' by=place ( COMMA? atOnce )? ( COMMA? failures )? EOF ;
can   : 'can' what=place 'run' ( 'via' via+=place ( ( COMMA | 'and' ) via+=place )* )? ( COMMA? failures )? EOF ;
waive : 'waive' name 'on' refs 'because' TEXT EOF ;

settled  : 'when' ( 'settled' | 'quiet' ) ;
atOnce   : 'at' 'once' ;
failures : 'even' 'with' NUMBER ( 'failure' | 'failures' ) ;
place    : name plainWord* terminals? ;

condition     : conditionPart ( ( 'and' conditionPart )+ | ( 'or' conditionPart )+ )? ;
conditionPart : 'not'? ( LPAREN condition RPAREN | stateTerm ) ;
stateTerm     : subjectWord stateWord* ( terminals stateWord* )? ;

// ---- Kinds ---------------------------------------------------------------------------------------------------------

kind   : 'kind' name+ EOF ;
means  : 'means' TEXT EOF ;
letter : 'letter' name EOF ;
symbol : 'symbol' name+ EOF ;
like   : 'like' phrase EOF ;
end    : 'end' EOF ;

takes        : 'takes' phrase ratingForm ( COMMA takesOption )* EOF ;
ratingForm   : 'in' unit ( 'to' unit )? | 'of' choice ( BAR choice )* | 'as' ratingShape ;
ratingShape  : 'number' | 'text' | 'positions' | 'devices' ;
choice       : label ;
takesOption  : 'bare' | 'needed' | 'default' defaultValue ;
defaultValue : ( name | TEXT | PERCENT )+ ;
unit         : plainWord+ | PERCENT ;
flag         : 'flag' name+ EOF ;
let          : 'let' phrase EQUALS sum EOF ;

ifBlock     : 'if' guard EOF ;
elseLine    : 'else' EOF ;
forEachPole : 'for' 'each' 'pole' pair+ first? EOF ;
first       : COMMA 'first' sum ;

bar           : 'bar' list+ first? EOF ;
side          : ( 'line' | 'load' ) 'side' list first? EOF ;
element       : elementType ( name+ pair? | pair ) ( COMMA elementOption )* EOF ;
elementType   : 'conductor' | 'contact' | 'semiconductor' | 'thermal' | 'series' | 'load' | 'diode' | 'fault' ;
elementOption : 'power' | 'through' | 'welds' | 'closed' 'when' guard | 'leaks' 'when' guard ;
coil          : 'coil' name* pair 'at' sum COMMA 'moves' name EOF ;
family        : 'family' familyName pair ( 'by' by=name )? ( COMMA familyOption )* EOF ;
familyName    : name+ ;
familyOption  : 'through' | 'welds' | 'closed' 'when' guard ;

variable       : 'variable' name COLON name ( BAR name )* ( COMMA variableOption )* EOF ;
variableOption : variableSort | 'rest' name | 'powered' name | 'momentary' ;
variableSort   : 'process' | 'condition' | 'cell' | 'timer' | 'trip' ;
move           : origin=name ARROW target=name 'by' mover=name ( COMMA? 'when' when=guard )? ( COMMA? 'may' 'when' may=guard )? EOF ;
positions      : 'positions' name 'of' phrase ( COMMA makeBefore )? EOF ;
makeBefore     : 'make' 'before' 'break' ;
failure        : 'failure' name 'of' 'class' name ( COMMA 'when' guard )? EOF ;
state          : 'state' label 'when' guard EOF ;

source          : 'source' name? ( COMMA supplyOption )* EOF ;
converter       : 'converter' type=name own=name? 'from' list ( COMMA converterOption )* EOF ;
converterOption : 'when' guard | supplyOption ;
supplyOption    : 'present' 'when' guard
                | 'group' name+
                | 'limited'
                | 'extra' 'low'
                | 'dc'
                | 'stored' 'by' name
                | 'discharge' sum
                ;
supplyConductor : 'conductor' LBRACKET terminal RBRACKET 'at' volts=sum ( 'angle' angle=sum )? ( COMMA conductorOption )* EOF ;
conductorOption : 'plus' | 'minus' | 'present' 'when' guard ;
winding         : 'winding' list EOF ;
coupling        : 'coupling' list+ ( COMMA 'from' 'first' )? EOF ;
loadMode        : 'mode' label 'feeds' list ( COMMA modeOption )* EOF ;
modeOption      : 'joined' pair+ | 'apart' pair+ | 'turns' name | 'speed' sum ;

use            : 'use' ( 'from' phrase | name ) EOF ;
isolates       : 'isolates' 'by' name 'through' phrase ( COMMA isolatesOption )* EOF ;
isolatesOption : 'lockable' | 'visible' | 'rank' NUMBER ;
protects       : 'protects' 'against' against=phrase 'through' through=phrase 'by' by=name EOF ;
opensOnShort   : 'opens' 'on' 'short' 'through' phrase COMMA variableName=name 'becomes' value=name ( COMMA 'breaks' sum )? EOF ;
constraint     : 'constraint' sort=name constraintName COLON guard EOF ;
constraintName : name* ;
devicePair     : 'pair' name 'of' phrase EOF ;

// ---- Conditions in kinds -------------------------------------------------------------------------------------------

guard     : guardPart ( ( 'and' guardPart )+ | ( 'or' guardPart )+ )? ;
guardPart : 'not'? ( LPAREN guard RPAREN | guardTerm ) ;
guardTerm : 'loosely'? 'energised' pair band?                              # energised
          | ( 'must' 'pull' | 'may' ( 'pull' | 'hold' ) ) pair 'at' sum    # pull
          | ( 'loosely' | 'series' )? 'fed' list ( 'forward' | 'reverse' )?  # fed
          | 'single' list                                                  # single
          | 'joined' pair                                                  # joined
          | 'at' 'most' 'one' 'of' name name+                              # atMostOne
          | ( 'any' | 'no' ) phrase ( 'closed' | 'carries' | 'is' label )? # quantified
          | phrase guardSuffix?                                            # named
          ;
band        : 'between' low=sum 'and' high=sum | 'at' at=sum ;
guardSuffix : 'is' label | 'at' ( 'least' | 'most' ) sum | 'given' | 'closed' | 'carries' ;

// ---- Numbers worked out from ratings -------------------------------------------------------------------------------

sum     : product ( ( PLUS | MINUS ) product )* ;
product : factor ( ( STAR | SLASH ) factor )* ;
factor  : MINUS? ( 'root' operand | NUMBER PERCENT 'of' operand | operand ) ;
operand : LPAREN sum RPAREN | NUMBER ( PERCENT | plainWord+ )? | ratingWord plainWord* ;

// ---- Terminals and words -------------------------------------------------------------------------------------------

pair     : LBRACKET terminal MINUS terminal RBRACKET ;
list     : LBRACKET terminal ( COMMA terminal )* RBRACKET ;
terminal : STAR? name | STAR | PLUS | MINUS ;

phrase      : plainWord+ ;
label       : name plainWord* ;
name        : WORD | NUMBER | ordinary | connecting | logical ;
plainWord   : WORD | NUMBER | ordinary ;
ratingWord  : WORD | ordinary ;
refWord     : WORD | NUMBER | ordinary | connecting | 'or' | 'not' ;
subjectWord : WORD | NUMBER | ordinary | connecting ;
stateWord   : WORD | NUMBER | ordinary | 'is' | 'at' | 'by' | 'of' | 'in' | 'as' | 'to' | 'through' | 'between'
            | 'from' | 'via' | 'on' | 'closed' | 'carries' | 'feeds' | 'given' | 'run' | 'angle' | 'becomes' | 'any' | 'no'
            ;

/** Words that join two of three terms of a condition. */
logical : 'and' | 'or' | 'not' ;

/** Words that end the phrase before them. */
connecting : 'is' | 'at' | 'when' | 'by' | 'of' | 'in' | 'as' | 'to' | 'through' | 'between' | 'from' | 'via' | 'on'
           | 'closed' | 'carries' | 'feeds' | 'given' | 'run' | 'angle' | 'becomes' | 'any' | 'no' | 'even' | 'root'
           | 'revision'
           ;

/** All other words of the language; they may stand inside a phrase. */
ordinary : 'panel' | 'site' | 'include' | 'drawing' | 'rules' | 'system' | 'rung' | 'wire' | 'untraced' | 'seen' | 'the' | 'never' | 'dead'
         | 'stops' | 'can' | 'waive' | 'settled' | 'quiet' | 'once' | 'with' | 'failure' | 'failures' | 'kind' | 'means'
         | 'letter' | 'symbol' | 'end' | 'takes' | 'number' | 'text' | 'positions' | 'devices' | 'bare' | 'needed'
         | 'default' | 'flag' | 'let' | 'if' | 'else' | 'for' | 'each' | 'pole' | 'first' | 'bar' | 'line' | 'load'
         | 'side' | 'conductor' | 'contact' | 'semiconductor' | 'thermal' | 'series' | 'diode' | 'fault' | 'power'
         | 'leaks' | 'like' | 'welds' | 'coil' | 'moves' | 'family' | 'variable' | 'process' | 'condition' | 'cell'
         | 'timer' | 'trip'
         | 'rest' | 'powered' | 'momentary' | 'may' | 'make' | 'before' | 'break' | 'class' | 'state' | 'source'
         | 'converter' | 'present' | 'group' | 'limited' | 'extra' | 'low' | 'dc' | 'stored' | 'discharge' | 'plus'
         | 'minus' | 'winding' | 'coupling' | 'mode' | 'joined' | 'apart' | 'turns' | 'speed' | 'use' | 'isolates'
         | 'lockable' | 'visible' | 'rank' | 'protects' | 'against' | 'opens' | 'short' | 'breaks' | 'constraint'
         | 'pair' | 'loosely' | 'energised' | 'must' | 'pull' | 'hold' | 'fed' | 'forward' | 'reverse' | 'single'
         | 'most' | 'one' | 'least'
         ;

// ---- Tokens --------------------------------------------------------------------------------------------------------
//
// Beyond ASCII the rules below see a letter as 'a', a mark or digit as '_', a space as ' ', what nobody sees as U+0001
// and all else as U+007E: their tables are then small and quick whatever the alphabet.

ARROW    : '->' ;
BAR      : '|' ;
COMMA    : ',' ;
COLON    : ':' ;
EQUALS   : '=' ;
PLUS     : '+' ;
MINUS    : '-' ;
STAR     : '*' ;
SLASH    : '/' ;
PERCENT  : '%' ;
LPAREN   : '(' ;
RPAREN   : ')' ;
LBRACKET : '[' ;
RBRACKET : ']' ;

/** A terminal's name behind a colon, without a space: ":13-14", ":2/T1", ":L+", ":+". */
TERMINAL : ':' ( '*'? NAME | SIGN ) ;

NUMBER : [0-9]+ ( '.' [0-9]+ )? ;
WORD   : NAME ;
TEXT   : '"' ~["\r\n]* '"' ;

/** A text without its closing quote: reported, never parsed. */
UNCLOSED : '"' ~["\r\n]* ;
COMMENT  : '#' ~[\r\n]* ;
NEWLINE  : '\r'? '\n' ;

/** Characters that nobody sees: reported, never parsed. A carriage return belongs before a line feed. */
INVISIBLE : [\u0000-\u0008\u000B-\u001F\u007F] ;
BLANK     : [ \t]+ -> skip ;
OTHER     : . ;

/** "K1", "-Q1", "=A1+B2-Q1", "+24", "1/L1", "AC-3", "480Y/277", "L-": joined by signs that no space surrounds. */
fragment NAME   : ( [-=] LETTER | '+'? CHAR ) CHAR* ( [-+/.=#'] CHAR+ )* SIGN? ;
fragment SIGN   : '+' | '-' { InputStream.LA(1) != '>' }? ;
fragment CHAR   : [A-Za-z0-9_] ;
fragment LETTER : [A-Za-z] ;
