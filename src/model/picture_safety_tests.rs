//! Drawings that can do something, in many spellings, and drawings that can only be looked at.

use super::*;

fn inside(text: &str) -> Option<Danger> {
    danger(format!("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">{text}</svg>").as_bytes())
}

#[test]
fn drawings_of_the_usual_programs_are_fine() {
    for text in [
        "<path d='M0 0h9' fill='url(#a)'/><use href='#b'/><use xlink:href=\"#b\"/>",
        "<style>path{fill:url(#a);stroke:red} text{font:9px sans-serif}</style>",
        "<style><![CDATA[ .a > .b { fill: none } ]]></style><text>a &lt; b &amp; c</text>",
        "<image href='data:image/png;base64,iVBORw0KGgo='/>",
        "<!-- <script> in a comment --><title>on the bench: one=two</title>",
        "<metadata><rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'><dc:title>x</dc:title></rdf:RDF></metadata>",
    ] {
        assert_eq!(inside(text), None, "{text}");
    }
    assert_eq!(danger(b"<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"no\"?>\n<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\"><svg/>"), None);
    assert_eq!(danger(b"\xff\xd8\xff\xe0 a photograph"), None);
}

#[test]
fn what_runs_is_refused_in_every_spelling() {
    for text in [
        "<script>alert(1)</script>",
        "<SCRIPT>alert(1)</SCRIPT>",
        "<svg:script xmlns:svg='http://www.w3.org/2000/svg'>alert(1)</svg:script>",
        "<script/>",
        "<script\n>alert(1)</script\n>",
        "<foreignObject><p>x</p></foreignObject>",
        "<path onclick='alert(1)'/>",
        "<path d='M0 0'\nONLOAD = \"alert(1)\"/>",
        "<a href='javascript:alert(1)'><text>x</text></a>",
        "<a href='java&#115;cript:alert(1)'/>",
        "<a href=' java\tscript&colon;alert(1)'/>",
        "<a xlink:href='&#x6A;avascript:alert(1)'/>",
        "<set attributeName='href' to='javascript:alert(1)'/>",
        "<animate attributeName='href' values='javascript:alert(1)'/>",
        "<x:p xmlns:x='http://www.w3.org/1999/xhtml'/>",
        "<use href='data:image/svg+xml;base64,AAAA#x'/>",
        "<a href='data:text/html,x'/>",
        "<iframe src='x'/>",
    ] {
        assert!(inside(text).is_some(), "{text}");
    }
}

#[test]
fn what_fetches_is_refused() {
    for text in [
        "<image href='https://example.org/a.png'/>",
        "<image href='//example.org/a.png'/>",
        "<image href='other.png'/>",
        "<use href='sprite.svg#a'/>",
        "<path fill='url(https://example.org/a#b)'/>",
        "<path style='fill:url( \"https://example.org\" )'/>",
        "<style>@import 'https://example.org/a.css';</style>",
        "<style>a{background:u\\72l(https://example.org)}</style>",
        "<style><![CDATA[a{b:url(x.png)}]]></style>",
        "<style>a{b:image-set('x.png' 1x)}</style>",
    ] {
        assert!(inside(text).is_some(), "{text}");
    }
}

#[test]
fn what_could_be_read_otherwise_is_refused() {
    assert_eq!(danger(b"\xfe\xff\0<\0s"), Some(Danger::NotUtf8));
    assert!(matches!(danger(b"<?xml version='1.0' encoding='UTF-7'?><svg/>"), Some(Danger::Declaration(_))));
    assert!(matches!(danger(b"<?xml-stylesheet href='x'?><svg/>"), Some(Danger::Declaration(_))));
    assert!(matches!(danger(b"<!DOCTYPE svg [<!ENTITY a 'b'>]><svg/>"), Some(Danger::Declaration(_))));
    assert_eq!(danger(b"<svg><path d='>"), Some(Danger::Malformed));
    assert_eq!(danger(b"<svg a=b/>"), Some(Danger::Malformed));
    assert_eq!(danger(b"<svg><!-- "), Some(Danger::Malformed));
}
