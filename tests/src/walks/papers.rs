//! Papers that architects send, made for tests: a PDF of pages with lines, a scan, a drawing.

use std::fmt::Write as _;

use gantline_exchange::png::png_of_svg;

/// A PDF of pages of this size, points, each with its content.
pub fn pdf(size: (u32, u32), pages: &[&str]) -> Vec<u8> {
    let mut objects = vec!["<< /Type /Catalog /Pages 2 0 R >>".to_owned()];
    let kids: Vec<String> = (0..pages.len()).map(|index| format!("{} 0 R", 3 + 2 * index)).collect();
    objects.push(format!("<< /Type /Pages /Count {} /Kids [{}] >>", pages.len(), kids.join(" ")));
    for (index, content) in pages.iter().enumerate() {
        let media_box = format!("[0 0 {} {}]", size.0, size.1);
        let contents = 4 + 2 * index;
        objects.push(format!(
            "<< /Type /Page /Parent 2 0 R /MediaBox {media_box} /Resources << >> /Contents {contents} 0 R >>"
        ));
        objects.push(format!("<< /Length {} >>\nstream\n{content}\nendstream", content.len()));
    }
    let mut file = "%PDF-1.4\n".to_owned();
    let mut places = Vec::new();
    for (index, object) in objects.iter().enumerate() {
        places.push(file.len());
        write!(file, "{} 0 obj\n{object}\nendobj\n", index + 1).expect("text");
    }
    let begin = file.len();
    write!(file, "xref\n0 {}\n0000000000 65535 f \n", objects.len() + 1).expect("text");
    for place in places {
        writeln!(file, "{place:010} 00000 n ").expect("text");
    }
    write!(file, "trailer\n<< /Size {} /Root 1 0 R >>\nstartxref\n{begin}\n%%EOF\n", objects.len() + 1).expect("text");
    file.into_bytes()
}

/// A page of A3 with an invented roof at 1:100: outline, a stair head, a grid, hatched parapets.
pub fn roof_page() -> Vec<u8> {
    // 1 m is 72 / 2.54 points at 1:100.
    let m = |value: f64| value * 72.0 / 2.54;
    let mut content = String::from("0.8 w 0 0 0 RG\n");
    let mut frame = |x: f64, y: f64, width: f64, depth: f64| {
        writeln!(content, "{:.2} {:.2} {:.2} {:.2} re S", m(x), m(y), m(width), m(depth)).expect("text");
    };
    frame(5.0, 5.0, 30.0, 20.0);
    frame(5.3, 5.3, 29.4, 19.4);
    frame(16.0, 12.0, 6.0, 4.0);
    frame(26.0, 8.0, 3.0, 2.0);
    content.push_str("0.3 w 0.2 0.3 0.7 RG [9 3 2 3] 0 d\n");
    for axis in 0..6 {
        let x = m(5.0 + 6.0 * f64::from(axis));
        writeln!(content, "{x:.2} {:.2} m {x:.2} {:.2} l S", m(3.0), m(27.0)).expect("text");
    }
    content.push_str("[] 0 d 0.7 0.2 0.1 rg\n");
    writeln!(content, "{:.2} {:.2} {:.2} {:.2} re f", m(16.0), m(12.0), m(6.0), m(0.4)).expect("text");
    pdf((1191, 842), &[&content])
}

/// A scan of 400 by 300 pixels with a dark frame.
pub fn scan() -> Vec<u8> {
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"400\" height=\"300\" viewBox=\"0 0 400 300\">\
               <rect width=\"400\" height=\"300\" fill=\"#f4efe2\"/>\
               <rect x=\"20\" y=\"20\" width=\"360\" height=\"260\" fill=\"none\" stroke=\"#333\" stroke-width=\"4\"/></svg>";
    png_of_svg(svg, 1.0).expect("a picture")
}

/// A drawing in millimeters: a rectangle of 24.125 by 13.05 m whose corner is at (2, 1) m.
pub fn drawing() -> Vec<u8> {
    "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\nSLAB\n70\n1\n\
     10\n2000\n20\n1000\n10\n26125\n20\n1000\n10\n26125\n20\n14050\n10\n2000\n20\n14050\n0\nENDSEC\n0\nEOF\n"
        .as_bytes()
        .to_vec()
}
